import type { Bit } from "../../bit/bit.ts";
import { formPilotRadiusMm } from "../../bit/form/registry.ts";
import type { Outline } from "../../bit/outline.ts";
import { radiiInUse } from "../../bit/section.ts";
import { isUndercut } from "../../bit/shape.ts";
import type { GrooveCut } from "../cut.ts";
import type { BaseSetup, Waste } from "../setup.ts";
import { unsuitable } from "./unsuitable.ts";

/** A wasted groove stays this far inside the finished one, on each side and at the bottom, mm. Ours. */
const WASTE_CLEARANCE_MM = 0.5;

/** The setting for a groove at the bit's own width: walked up to by height, or at once with an undercut bit. */
export function grooveSetup(bit: Bit, outline: Outline, cut: GrooveCut): BaseSetup {
  const isLetIn = formPilotRadiusMm(bit.form) === undefined && outline.every(({ role }) => role === "edge");
  if (!isLetIn) throw unsuitable("a bit without a pilot bearing or an arbor");
  const once = isUndercut(outline);
  return {
    approach: once ? "once" : "height",
    heightMm: cut.depthMm,
    fenceMm: 0,
    // The work covers the whole bit: nothing of it stands above the wood.
    thicknessMm: cut.depthMm,
    sides: 2,
    rows: 1,
    waste: once ? wasteFor(outline, cut.depthMm) : undefined,
    assumed: [],
    reach: { pointer: "/depthMm", zeroMm: 0 },
  };
}

/** The widest groove a straight bit can take out first without touching the finished walls. */
function wasteFor(outline: Outline, depthMm: number): Waste | undefined {
  const used = radiiInUse(outline, { heightMm: depthMm, fenceMm: 0, thicknessMm: depthMm });
  const widthMm = 2 * ((used?.leastMm ?? 0) - WASTE_CLEARANCE_MM);
  const wasteDepthMm = depthMm - WASTE_CLEARANCE_MM;
  return widthMm > 0 && wasteDepthMm > 0 ? { widthMm, depthMm: wasteDepthMm } : undefined;
}
