import { outlineLengthMm } from "@rimwise/domain";
import { bearings } from "../../drafting/bearing.ts";
import { broken } from "../../drafting/break-line.ts";
import { hatched, METAL } from "../../drafting/hatch.ts";
import { outlineContour } from "../../drafting/outline-path.ts";
import { onPaper } from "../../scene/frame.ts";
import { path, polyline, worldRectangle } from "../../scene/path.ts";
import type { Item, PathItem } from "../../scene/scene.ts";
import { leftEndMm, OPENING_MM, type Section, type SectionPlace } from "./layout.ts";

/** How thick a table or base is drawn, and how far an axis goes past the bit, mm of paper. */
const GROUND_MM = 4;
const AXIS_PAST_MM = 2.5;

/** The table or base in section, on both sides of the opening for the bit. A router on rails stands clear of the work: it has none. */
export function ground(section: Section, { frame, scale }: SectionPlace): Item[] {
  if (section.plan.guide === "rails") return [];
  const { planeMm, standing, workMm, rimRadiusMm, input } = section;
  const halfMm = Math.max(rimRadiusMm, input.bit.shankDiameterMm / 2) + OPENING_MM;
  const belowMm = planeMm - GROUND_MM / scale;
  const parts: [number, number][] = [
    [leftEndMm(section), standing.axisMm - halfMm],
    [standing.axisMm + halfMm, workMm[1]],
  ];
  const contours = parts
    .filter(([fromMm, toMm]) => toMm > fromMm)
    .flatMap(([fromMm, toMm]) => worldRectangle(frame, [fromMm, belowMm], [toMm, planeMm]));
  const of = section.isTable ? "table" : "base";
  return [path({ of }, contours, "medium"), hatched({ of }, contours, METAL)];
}

/** The bit at its last setting, with the shank as it goes on to the router. */
export function bitInPlace(section: Section, { frame, scale }: SectionPlace): PathItem[] {
  const { outline, standing, footMm, input } = section;
  const headFootMm = standing.tipMm - outlineLengthMm(outline);
  const radiusMm = input.bit.shankDiameterMm / 2;
  const [leftMm, rightMm] = [standing.axisMm - radiusMm, standing.axisMm + radiusMm];
  const place = (zMm: number) => onPaper(frame, standing.axisMm, zMm);
  return [
    path({ of: "shank" }, worldRectangle(frame, [leftMm, footMm], [rightMm, headFootMm]), "medium", "paper"),
    ...broken(frame, [leftMm, footMm], [rightMm, footMm]),
    path({ of: "outline" }, outlineContour(outline, frame, standing), "medium"),
    ...bearings(outline, frame, standing),
    path(
      { of: "axis" },
      polyline([place(standing.tipMm + AXIS_PAST_MM / scale), place(footMm - AXIS_PAST_MM / scale)]),
      "chain",
    ),
  ];
}
