import type { FormKind } from "../bit/form/registry.ts";
import type { GuideName } from "../cut/guide-name.ts";
import type { Cut } from "../cut/kind/registry.ts";
import type { Pass } from "../cut/passes.ts";
import type { Plan } from "../plan/plan.ts";
import type { TestPiece } from "../plan/test-piece.ts";
import type { Mounting } from "../router/mounting.ts";
import type { Mark } from "../router/router.ts";
import type { Wood } from "../wood/wood.ts";
import type { OrderRule } from "./order-rule.ts";

/** One cut in one part of a job, with the plan for it. */
export type PlannedCut = {
  /** The part it is made in, by its place in the job. */
  readonly part: number;
  readonly bitId: string;
  readonly routerId: string;
  readonly mounting: Mounting;
  readonly form: FormKind;
  readonly wood: Wood;
  readonly cut: Cut;
  /** How many pieces, spares among them. */
  readonly pieces: number;
  /** Of a groove in a face: how far its middle lies from the edge or end that it is measured from, mm. */
  readonly positionMm?: number | undefined;
  readonly plan: Plan;
  /** The cut that it takes wood out for, by its place in the list, if it is made for another. */
  readonly isWasteFor?: number | undefined;
  /** The settings at which it has been made already: passes that go no further are not made again. */
  readonly made?: readonly MadeAt[];
};

/** A setting at which a cut was made. */
export type MadeAt = Pick<Pass, "heightMm" | "fenceMm">;

/** One pass of one cut at a set-up. */
export type SetupRun = {
  /** The cut, by its place in the list of planned cuts. */
  readonly cut: number;
  readonly pass: number;
  readonly pieces: number;
  /** The fence of the pass in the plan's frame, set by hand or given by a bearing. */
  readonly fenceMm: number;
  readonly metresPerPiece: number;
  readonly secondsPerPiece: number;
};

/** Something that must be done before, and why. */
export type Before = { readonly setupId: string; readonly rule: OrderRule };

/** One bit at one height and fence, in one router as it is mounted, at one mark of its dial: everything that is cut so in a job. */
export type JobSetup = {
  readonly id: string;
  readonly bitId: string;
  readonly routerId: string;
  readonly mounting: Mounting;
  readonly guide: GuideName;
  readonly kind: Pass["kind"];
  readonly heightMm: number;
  /** How much of the height is cutter. */
  readonly cutterMm: number;
  /** Undefined if nothing is set to a distance: a bearing or a template gives it. */
  readonly fenceMm: number | undefined;
  /** Of a groove in a face: how far its middle lies from the edge or end, mm. */
  readonly positionMm: number | undefined;
  readonly mark: Mark | undefined;
  readonly rpm: number;
  readonly runs: readonly SetupRun[];
  /** What a test piece must measure before the run, if the cut ends at this set-up and it can be measured. */
  readonly testPiece: TestPiece | undefined;
  readonly after: readonly Before[];
};
