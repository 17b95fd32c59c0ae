import { formPilotRadiusMm } from "../../bit/form/registry.ts";
import type { Outline } from "../../bit/outline.ts";
import { entersOwnHole } from "../../bit/plunge.ts";
import { radiiInUse } from "../../bit/section.ts";
import { isParallel, isUndercut } from "../../bit/shape.ts";
import { rimRadiusMm } from "../../bit/solid.ts";
import { DomainError, type Fault } from "../../quantity/fault.ts";
import { optionalFlag, optionalLengthMm } from "../../quantity/field.ts";
import { floorTo } from "../../quantity/round.ts";
import { REACH_SLACK_MM, type Waste } from "../base-setup.ts";
import { grooveRuns } from "../runs.ts";
import { bushingFields, bushingSetup } from "./bushing.ts";
import { defineCut } from "./define.ts";
import { depthMm } from "./work-fields.ts";

/** It is set to tenths of a millimetre, rounded down. */
const SETTABLE_DECIMALS = 1;

/** A wasted groove stays this far inside the finished one, on each side and at the bottom, mm. Ours. */
const WASTE_CLEARANCE_MM = 0.5;

/** Wider is a surface, mm. Ours. */
const WIDEST_GROOVE_MM = 150;

/** Walked up to by height, or cut at once with an undercut bit. */
export const groove = defineCut({
  kind: "groove",
  meaning:
    "A groove or dado, at the bit's own width or wider; a dovetail, keyhole or T-slot with a bit of that form.",
  fields: {
    depthMm,
    widthMm: optionalLengthMm(
      "Width of the groove; wider than the bit, it is cut in runs side by side. Default: the bit's own.",
      1,
      WIDEST_GROOVE_MM,
    ),
    isStopped: optionalFlag("It starts or ends inside the work."),
    ...bushingFields,
  },
  sides: 2,
  needs: {
    code: "edges-only",
    isMetBy: ({ form }, outline) =>
      formPilotRadiusMm(form) === undefined && outline.every(({ role }) => role === "edge"),
  },
  setup: (bit, outline, cut, setIn) => {
    const once = isUndercut(outline);
    const rimMm = rimRadiusMm(outline);
    const widthMm = cut.widthMm ?? 2 * rimMm;
    const faults = widthFaults(widthMm, 2 * rimMm, isParallel(outline));
    if (faults.length > 0) throw new DomainError(faults);
    const runs = grooveRuns(rimMm, widthMm, setIn);
    return {
      approach: once ? "once" : "height",
      heightMm: cut.depthMm,
      fenceMm: 0,
      // The work covers the whole bit: nothing of it stands above the wood.
      thicknessMm: cut.depthMm,
      rows: runs?.by === "move" ? runs.overMm.length : 1,
      runs,
      waste: once && !entersOwnHole(bit) ? wasteFor(outline, cut.depthMm) : undefined,
      reach: { pointer: "/depthMm", zeroMm: 0 },
      ...bushingSetup(cut),
    };
  },
});

/** A bit cuts no narrower than it is, and only one with parallel edges leaves a flat bottom beside its own groove. */
function widthFaults(widthMm: number, bitWidthMm: number, canMoveOver: boolean): Fault[] {
  const max = canMoveOver ? WIDEST_GROOVE_MM : bitWidthMm;
  if (widthMm >= bitWidthMm - REACH_SLACK_MM && widthMm <= max + REACH_SLACK_MM) return [];
  const values = { given: widthMm, min: bitWidthMm, max };
  return [{ pointer: "/widthMm", code: "out-of-range", values }];
}

/** The widest groove a straight bit can take out first without touching the finished walls. */
function wasteFor(outline: Outline, grooveDepthMm: number): Waste | undefined {
  const used = radiiInUse(outline, { heightMm: grooveDepthMm, fenceMm: 0, thicknessMm: grooveDepthMm });
  const widthMm = floorTo(2 * ((used?.leastMm ?? 0) - WASTE_CLEARANCE_MM), SETTABLE_DECIMALS);
  const wasteDepthMm = floorTo(grooveDepthMm - WASTE_CLEARANCE_MM, SETTABLE_DECIMALS);
  return widthMm > 0 && wasteDepthMm > 0 ? { widthMm, depthMm: wasteDepthMm } : undefined;
}
