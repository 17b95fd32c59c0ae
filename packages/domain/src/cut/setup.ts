import type { Bit } from "../bit/bit.ts";
import { edgesFromMm, type LineSegment, type Outline, outlineLengthMm } from "../bit/outline.ts";
import { firstContactMm, radiiInUse, removedAreaMm2 } from "../bit/section.ts";
import { DomainError } from "../quantity/fault.ts";
import { type BaseSetup, REACH_SLACK_MM } from "./base-setup.ts";
import { baseSetup, type Cut, cutSummary } from "./kind/registry.ts";
import type { SetIn } from "./settable.ts";
import { withWorkThickness } from "./work-fit.ts";

/** A cut as geometry: the final setting, and the one setting that is walked up to it. */
export type CutSetup = BaseSetup & {
  /** A groove is cut on both sides of the axis, an edge on one. */
  readonly sides: 1 | 2;
  /** From the tip to the first part of the edge that reaches past the fence. */
  readonly contactMm: number;
  /** Greatest radius that touches wood in the whole cut, and least. */
  readonly greatestRadiusMm: number;
  readonly leastRadiusMm: number;
  /** From the tip to where its edges begin: the height of a bearing on the tip, else 0. Heights are set by the cutter. */
  readonly edgesFromMm: number;
  /** How far the moved setting travels from first contact to the end, mm. */
  readonly travelMm: number;
};

/**
 * The final setting of a cut and how it is walked up to. Throws a DomainError with every fault if the bit
 * cannot be set so: too high for its edges, a fence beyond its rim, or nothing touched.
 */
export function cutSetup(bit: Bit, outline: Outline, cut: Cut, setIn?: SetIn): CutSetup {
  const base = baseSetup(bit, outline, withWorkThickness(cut), setIn);
  const { pointer, zeroMm } = base.reach;
  const reachMm = outlineLengthMm(outline);
  if (base.heightMm > reachMm + REACH_SLACK_MM) {
    const values = { given: base.heightMm - zeroMm, max: reachMm - zeroMm };
    throw new DomainError([{ pointer, code: "setting-out-of-reach", values }]);
  }
  const body = bodyInWork(outline, base);
  if (body !== undefined) {
    const values = { given: base.fenceMm, min: body.startRadiusMm };
    throw new DomainError([{ pointer: "/fenceMm", code: "body-would-rub", values }]);
  }
  const used = radiiInUse(outline, base);
  if (used === undefined || used.greatestMm - base.fenceMm <= REACH_SLACK_MM) {
    throw new DomainError([{ pointer, code: "nothing-removed", values: {} }]);
  }
  const contactMm = firstContactMm(outline, base.fenceMm) ?? 0;
  return {
    approach: base.approach,
    heightMm: base.heightMm,
    fenceMm: base.fenceMm,
    thicknessMm: base.thicknessMm,
    sides: cutSummary(cut.kind).sides,
    rows: base.rows,
    runs: base.runs,
    waste: base.waste,
    ...(base.underlayMm === undefined ? {} : { underlayMm: base.underlayMm }),
    ...(base.template === undefined ? {} : { template: base.template }),
    ...(base.bushing === undefined ? {} : { bushing: base.bushing }),
    assumed: base.assumed,
    reach: base.reach,
    contactMm,
    edgesFromMm: edgesFromMm(outline),
    greatestRadiusMm: used.greatestMm,
    leastRadiusMm: used.leastMm,
    travelMm: base.approach === "height" ? base.heightMm - contactMm : used.greatestMm - base.fenceMm,
  };
}

/** The setting with the moved part `beforeEndMm` short of its end. */
export function settingShortOfEnd(setup: CutSetup, beforeEndMm: number) {
  const { heightMm, fenceMm, thicknessMm } = setup;
  return setup.approach === "height"
    ? { heightMm: heightMm - beforeEndMm, fenceMm, thicknessMm }
    : { heightMm, fenceMm: fenceMm + beforeEndMm, thicknessMm };
}

/** Section in mm² removed by the bit up to `beforeEndMm` short of its end; what was wasted first is not the bit's. */
export function sectionMm2(outline: Outline, setup: CutSetup, beforeEndMm: number): number {
  const wholeMm2 = setup.sides * removedAreaMm2(outline, settingShortOfEnd(setup, beforeEndMm));
  return setup.waste === undefined ? wholeMm2 : wholeMm2 - setup.waste.widthMm * setup.waste.depthMm;
}

/** A part of the bit that does not cut and would be pressed into the work. */
function bodyInWork(
  outline: Outline,
  { heightMm, fenceMm, thicknessMm }: BaseSetup,
): LineSegment | undefined {
  for (const segment of outline) {
    if (segment.role !== "body" || segment.kind !== "line") continue;
    const isBesideWork = segment.toMm > heightMm - thicknessMm && segment.fromMm < heightMm;
    if (isBesideWork && segment.startRadiusMm > fenceMm) return segment;
  }
  return undefined;
}

/** How far the bit stands out of the table or base, through what lies between: with the cutter of a bit that has a bearing on its tip. */
export function standingOut({ underlayMm = 0, edgesFromMm }: CutSetup, heightMm: number) {
  const setMm = heightMm + underlayMm;
  return { heightMm: setMm, cutterMm: setMm - edgesFromMm };
}
