import type { Bit } from "../bit/bit.ts";
import { USUAL_PILOT_HEIGHT_MM } from "../bit/form/pilot.ts";
import { formPilotRadiusMm } from "../bit/form/registry.ts";
import { plungeOf } from "../bit/plunge.ts";
import type { BitSolid } from "../bit/solid.ts";
import type { SetupAssumption } from "../cut/base-setup.ts";
import { isStopped } from "../cut/course.ts";
import type { GuideName } from "../cut/guide-name.ts";
import type { Cut } from "../cut/kind/registry.ts";
import type { CutSetup } from "../cut/setup.ts";
import type { Guidance } from "../guide/choose.ts";
import type { Policy } from "../policy/policy.ts";
import { type DialSpeed, doubtedReadings } from "../router/dial.ts";
import type { Mark, Router, UnusedReading } from "../router/router.ts";

import { type AssumedDimension, assumedDimensions } from "./assumed-dimensions.ts";

/** What the plan took for granted, and which side it took. */
export type Assumption =
  | SetupAssumption
  | { readonly code: "guide-assumed"; readonly guide: GuideName }
  | { readonly code: "work-not-described" }
  | { readonly code: "end-cutting-unknown" }
  | { readonly code: "mass-estimated"; readonly massG: number; readonly massHighG: number }
  | { readonly code: "no-marked-maximum" }
  | { readonly code: "pilot-height-assumed"; readonly pilotHeightMm: number }
  | { readonly code: "collets-unknown"; readonly shankDiameterMm: number }
  | { readonly code: "dial-not-measured"; readonly toleranceRatio: number }
  | { readonly code: "dial-between-readings"; readonly toleranceRatio: number }
  | { readonly code: "dial-unknown"; readonly toleranceRatio: number }
  | { readonly code: "single-speed"; readonly toleranceRatio: number }
  | {
      readonly code: "reading-doubted";
      readonly mark: Mark;
      readonly rpm: number;
      readonly countsRpm: number;
    }
  | ({ readonly code: "reading-left-out" } & UnusedReading)
  | AssumedDimension
  | { readonly code: "motor-power-assumed"; readonly powerW: number }
  | { readonly code: "run-out-assumed"; readonly runOutMm: number }
  | { readonly code: "stick-out-assumed"; readonly stickOutMm: number }
  | { readonly code: "no-load-speed" };

export type AssumptionCode = Assumption["code"];

/** What of a request leaves things open. */
type AssumedOf = {
  readonly bit: Bit;
  readonly router: Router;
  readonly cut: Cut;
  readonly policy: Policy;
};

/** Everything a plan takes for granted about this bit, router, cut and dial setting. */
export function assumptionsFor(
  { bit, router, cut, policy }: AssumedOf,
  solid: BitSolid,
  setup: CutSetup,
  setting: DialSpeed | undefined,
  { guide, isAssumed }: Guidance,
): Assumption[] {
  const found: Assumption[] = [];
  if (bit.markedMaxRpm === undefined) found.push({ code: "no-marked-maximum" });
  if (solid.massSource === "estimated") {
    const massHighG = solid.massG * (1 + policy.massEstimateToleranceRatio);
    found.push({ code: "mass-estimated", massG: solid.massG, massHighG });
  }
  if (formPilotRadiusMm(bit.form) !== undefined && !("pilotHeightMm" in bit.form && bit.form.pilotHeightMm)) {
    found.push({ code: "pilot-height-assumed", pilotHeightMm: USUAL_PILOT_HEIGHT_MM });
  }
  found.push(...assumedDimensions(bit.form));
  if (bit.runOutMm === undefined) found.push({ code: "run-out-assumed", runOutMm: policy.runOutAssumedMm });
  if (bit.stickOutMm === undefined) {
    found.push({ code: "stick-out-assumed", stickOutMm: policy.stickOutAssumedMm });
  }
  if (router.inputPowerW === undefined) {
    found.push({ code: "motor-power-assumed", powerW: policy.inputPowerAssumedW });
  }
  if (router.colletDiametersMm === undefined) {
    found.push({ code: "collets-unknown", shankDiameterMm: bit.shankDiameterMm });
  }
  if (isStopped(cut) && plungeOf(bit) === "not-known") {
    found.push({ code: "end-cutting-unknown" });
  }
  if (cut.work === undefined) found.push({ code: "work-not-described" });
  if (guide !== undefined && isAssumed) found.push({ code: "guide-assumed", guide: guide.name });
  found.push(...setup.assumed, ...readingAssumptions(router));
  if (setting !== undefined) found.push(...dialAssumptions(setting, policy), { code: "no-load-speed" });
  return found;
}

/** Readings that do not say how fast a mark turns, whichever mark is used: somebody entered them and relies on them. */
function readingAssumptions(router: Router): Assumption[] {
  return [
    ...doubtedReadings(router).map(({ mark, rpm, countsRpm }) => {
      return { code: "reading-doubted", mark, rpm, countsRpm } as const;
    }),
    ...(router.dial?.unusedReadings ?? []).map(
      (unused) => ({ code: "reading-left-out", ...unused }) as const,
    ),
  ];
}

function dialAssumptions(setting: DialSpeed, policy: Policy): Assumption[] {
  switch (setting.basis) {
    case "reading":
      return [];
    case "between-readings":
      return [{ code: "dial-between-readings", toleranceRatio: policy.dialBetweenToleranceRatio }];
    case "range":
      return [{ code: "dial-not-measured", toleranceRatio: policy.dialRangeToleranceRatio }];
    case "single-speed":
      return [{ code: "single-speed", toleranceRatio: policy.dialRangeToleranceRatio }];
    case "no-dial":
      return [{ code: "dial-unknown", toleranceRatio: policy.dialRangeToleranceRatio }];
  }
}
