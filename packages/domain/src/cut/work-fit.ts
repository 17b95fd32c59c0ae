import type { Fault } from "../quantity/fault.ts";
import { isStraight } from "./course.ts";
import type { Edge } from "./edge.ts";
import { type Cut, cutSummary } from "./kind/registry.ts";
import type { Work } from "./work.ts";

/** Two measures of one piece may differ by this, mm: both were measured. Ours. */
const MEASURED_SLACK_MM = 0.5;

/** The cut with the thickness of its work where it gives none of its own and takes one. */
export function withWorkThickness<Given extends Cut>(cut: Given): Given {
  const thicknessMm = cut.work?.thicknessMm;
  if (thicknessMm === undefined || !("thicknessMm" in cutSummary(cut.kind).fields)) return cut;
  return { ...cut, thicknessMm };
}

/**
 * How long an edge of the work runs along a fence or base while this is cut, mm: its length for a cut along the grain, its width for one
 * across it or into the end. Not said, no longer than what is cut, which is the cautious side.
 */
export function contactMm({ work }: Pick<Cut, "work">, edge: Edge): number {
  return (edge.grain === "long" ? work?.lengthMm : work?.widthMm) ?? edge.lengthMm;
}

/** The shortest of these contacts over all that is cut, mm. */
export function shortestContactMm(cut: Cut): number {
  let shortestMm = Number.POSITIVE_INFINITY;
  for (const edge of cut.edges) shortestMm = Math.min(shortestMm, contactMm(cut, edge));
  return shortestMm;
}

/** What the piece and the cut say of each other that cannot both be so. Pointers start at the cut. */
export function workFaults(cut: Cut): Fault[] {
  const { work } = cut;
  if (work === undefined) return [];
  return [...thicknessFaults(cut, work), ...edgeFaults(cut, work)];
}

function thicknessFaults(cut: Cut, { thicknessMm }: Work): Fault[] {
  if (thicknessMm === undefined) return [];
  if ("thicknessMm" in cut && cut.thicknessMm !== undefined && cut.thicknessMm !== thicknessMm) {
    const values = { given: thicknessMm, cutMm: cut.thicknessMm };
    return [{ pointer: "/work/thicknessMm", code: "thicknesses-disagree", values }];
  }
  if ("depthMm" in cut && cut.depthMm >= thicknessMm) {
    return [
      { pointer: "/depthMm", code: "out-of-range", values: { given: cut.depthMm, below: thicknessMm } },
    ];
  }
  return [];
}

/** A straight edge is no longer than its side of the piece. */
function edgeFaults(cut: Cut, work: Work): Fault[] {
  if (!isStraight(cut)) return [];
  return cut.edges.flatMap(({ grain, lengthMm }, index) => {
    const sideMm = grain === "long" ? work.lengthMm : work.widthMm;
    if (sideMm === undefined || lengthMm <= sideMm + MEASURED_SLACK_MM) return [];
    const values = { given: lengthMm, max: sideMm };
    return [{ pointer: `/edges/${index}/lengthMm`, code: "longer-than-work" as const, values }];
  });
}
