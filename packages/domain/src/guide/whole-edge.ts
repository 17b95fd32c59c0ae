import { type Outline, radiusOnSegmentMm, type Segment } from "../bit/outline.ts";
import { isParallel } from "../bit/shape.ts";
import type { CutSetup } from "../cut/setup.ts";
import type { GuideContext } from "./define.ts";

/** Less than this off the whole edge, and the work still runs on what is left, mm. Ours. */
const STILL_RUNS_MM = 0.2;

/** Whether nothing of the edge is left where it ran before: past the bit a fence or an edge guide holds nothing. */
export function removesWholeEdge({ cut, setup, outline, pilotRadiusMm }: GuideContext): boolean {
  if (cut.kind !== "edge" || pilotRadiusMm !== undefined || setup.heightMm < setup.thicknessMm) return false;
  return leastWidthMm(outline, setup) > STILL_RUNS_MM;
}

/** Whether a plain cylinder does so, which leaves an edge as straight as it was. */
export function planesWholeEdge(context: GuideContext): boolean {
  return removesWholeEdge(context) && isParallel(context.outline);
}

/** The least that is removed at any height of the work, from the fence face in, mm. 0 if some of it is untouched. */
function leastWidthMm(outline: Outline, { heightMm, fenceMm, thicknessMm }: CutSetup): number {
  const fromMm = heightMm - thicknessMm;
  let leastMm = Number.POSITIVE_INFINITY;
  for (const segment of outline) {
    if (segment.toMm <= fromMm || segment.fromMm >= heightMm) continue;
    if (segment.role !== "edge") return 0;
    leastMm = Math.min(leastMm, leastRadiusMm(segment, fromMm, heightMm) - fenceMm);
  }
  return Math.max(0, leastMm);
}

function leastRadiusMm(segment: Segment, fromMm: number, toMm: number): number {
  const startMm = Math.max(fromMm, segment.fromMm);
  const endMm = Math.min(toMm, segment.toMm);
  const places = [startMm, endMm];
  // An inward arc is narrowest over its centre.
  if (segment.kind === "arc" && segment.centreMm > startMm && segment.centreMm < endMm)
    places.push(segment.centreMm);
  return Math.min(...places.map((tMm) => radiusOnSegmentMm(segment, tMm)));
}
