import type { Bit } from "../bit/bit.ts";
import type { GuideName } from "../cut/guide-name.ts";
import type { Cut } from "../cut/kind/registry.ts";
import type { SetIn } from "../cut/settable.ts";
import type { LimitFinding, LimitName } from "../limit/ceiling.ts";
import type { RaisedBy } from "../limit/limit.ts";
import type { SpeedTrial } from "../limit/trial.ts";
import type { Policy } from "../policy/policy.ts";
import type { Precaution } from "../precaution/registry.ts";
import type { Mounting, MountingFinding } from "../router/mounting.ts";
import type { Router } from "../router/router.ts";
import type { Wood } from "../wood/wood.ts";
import type { Assumption } from "./assumptions.ts";
import type { DialSetting } from "./dial-setting.ts";
import type { Finding } from "./findings.ts";
import type { PastUse } from "./past-use.ts";
import type { PlannedPass } from "./planned-pass.ts";
import type { Step } from "./steps.ts";
import type { TestPiece } from "./test-piece.ts";
import type { UncertaintyCost } from "./uncertainty.ts";

/** Everything a plan is computed from. */
export type PlanInput = {
  readonly bit: Bit;
  readonly router: Router;
  readonly mounting: Mounting;
  readonly wood: Wood;
  readonly cut: Cut;
  readonly policy: Policy;
  /** What heights and fences are set by. Default: metric. */
  readonly setIn?: SetIn;
  /** Speed trials of this bit. */
  readonly trials?: readonly SpeedTrial[];
  /** How earlier cuts with this bit came out. */
  readonly history?: readonly PastUse[];
};

/** `do-not-run` gives no speed and no passes: nothing in it can be followed by mistake. */
export type Verdict = "run" | "run-with-care" | "do-not-run";

/** How much care each verdict asks for: the less, the better. */
export const VERDICT_RANK: Readonly<Record<Verdict, number>> = {
  run: 0,
  "run-with-care": 1,
  "do-not-run": 2,
};

export type Plan = {
  readonly verdict: Verdict;
  readonly findings: readonly Finding[];
  readonly mounting: MountingFinding & { readonly requested: Mounting };
  readonly speed: PlannedSpeed;
  /** Every limit that applies, lowest first: the first one binds. */
  readonly limits: readonly LimitFinding[];
  readonly passes: readonly PlannedPass[];
  /** What guides the work or the router; undefined when nothing does, and then nothing is cut. */
  readonly guide: GuideName | undefined;
  /** What to measure on a test piece at the final setting; undefined if a bearing decides all of it, or nothing may be cut. */
  readonly testPiece: TestPiece | undefined;
  readonly steps: readonly Step[];
  readonly precautions: readonly Precaution[];
  readonly assumptions: readonly Assumption[];
};

export type PlannedSpeed = {
  readonly ceilingRpm: number;
  readonly bindingLimit: LimitName;
  readonly nextLimit: LimitName | undefined;
  /** What would lift the binding limit. */
  readonly raisedBy: RaisedBy | undefined;
  /** What not knowing costs, the dearest first. */
  readonly uncertainties: readonly UncertaintyCost[];
  /** The setting to use; undefined when the verdict is `do-not-run`. */
  readonly setting: DialSetting | undefined;
};
