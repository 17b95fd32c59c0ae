import {
  type Bit,
  formDiameterMm,
  formPilotRadiusMm,
  type Outline,
  radiusOnSegmentMm,
  type Segment,
  type Show,
} from "@rimwise/domain";
import { MEASURE_ROW_MM, type Measured, measureAcross, measureUp } from "../../drafting/measure.ts";
import { MARGIN_MM, PAGE_WIDTH_MM } from "../../drafting/page.ts";
import type { Rows } from "../../drafting/text.ts";
import { onPaper } from "../../scene/frame.ts";
import type { Item } from "../../scene/scene.ts";
import { type BitLayout, hasPilotAtTip } from "./layout.ts";

/** Two lengths that differ by less are one, mm: the finest that is shown. */
const SAME_MM = 0.005;

/** The dimensions around a bit: diameters above and below it, lengths beside it. */
export function bitMeasures(bit: Bit, outline: Outline, layout: BitLayout, show: Show): Rows {
  const { frame, headMm, shankShownMm, shankRadiusMm } = layout;
  const footMm = onPaper(frame, 0, headMm + shankShownMm).yMm;
  const diameter = (name: string, radiusMm: number, tMm: number): Measured => ({
    name,
    valueMm: 2 * radiusMm,
    text: `⌀ ${show.length(2 * radiusMm)}`,
    from: onPaper(frame, -radiusMm, tMm),
    to: onPaper(frame, radiusMm, tMm),
  });
  const pilotMm = formPilotRadiusMm(bit.form);
  const isAtTip = hasPilotAtTip(bit, outline);
  const pilotAt = outline.find(({ role }) => role === "pilot");
  const above = [
    diameter("cutting-diameter", formDiameterMm(bit.form) / 2, widestAtMm(outline)),
    ...(pilotMm !== undefined && isAtTip ? [diameter("pilot-diameter", pilotMm, 0)] : []),
  ];
  const below = [
    ...(pilotMm !== undefined && !isAtTip && pilotAt !== undefined
      ? [diameter("pilot-diameter", pilotMm, pilotAt.toMm)]
      : []),
    diameter("shank-diameter", shankRadiusMm, headMm + shankShownMm),
  ];
  const items: Item[] = [
    ...above.map((each, index) => measureAcross(each, layout.aboveLineMm + index * MEASURE_ROW_MM)),
    ...below
      .reverse()
      .map((each, index) => measureAcross(each, footMm + 4 + (index + 1) * MEASURE_ROW_MM - 2)),
    ...lengths(outline, layout, show),
  ];
  return { items, bottomMm: footMm + 3 + below.length * MEASURE_ROW_MM };
}

function lengths(outline: Outline, layout: BitLayout, show: Show): Item[] {
  const { frame, headMm, leftLineMm, rightLineMm } = layout;
  const edges = outline.filter(({ role }) => role === "edge");
  const [first, last] = [edges[0], edges.at(-1)];
  if (first === undefined || last === undefined) return [];
  const length = (name: string, [one, fromMm]: End, [other, toMm]: End, side: 1 | -1): Measured => ({
    name,
    valueMm: toMm - fromMm,
    text: show.length(toMm - fromMm),
    from: onPaper(frame, side * radiusOnSegmentMm(one, fromMm), fromMm),
    to: onPaper(frame, side * radiusOnSegmentMm(other, toMm), toMm),
  });
  const cutting = length("cutting-length", [first, first.fromMm], [last, last.toMm], -1);
  const [tip, foot] = [outline[0], outline.at(-1)];
  const leftMm = leftLineMm - MARGIN_MM;
  const isAll = cutting.valueMm > headMm - SAME_MM;
  return [
    measureUp(cutting, leftLineMm, "left", leftMm),
    ...(isAll || tip === undefined || foot === undefined
      ? []
      : [
          measureUp(
            length("head-length", [tip, 0], [foot, headMm], 1),
            rightLineMm,
            "right",
            PAGE_WIDTH_MM - MARGIN_MM - rightLineMm,
          ),
        ]),
  ];
}

type End = readonly [Segment, number];

/** Where the edges are widest, mm from the tip. */
function widestAtMm(outline: Outline): number {
  let widestMm = 0;
  let atMm = 0;
  for (const segment of outline) {
    if (segment.role !== "edge") continue;
    const places = [segment.fromMm, segment.toMm];
    if (segment.kind === "arc" && segment.centreMm > segment.fromMm && segment.centreMm < segment.toMm) {
      places.push(segment.centreMm);
    }
    for (const tMm of places) {
      const radiusMm = radiusOnSegmentMm(segment, tMm);
      if (radiusMm > widestMm) [widestMm, atMm] = [radiusMm, tMm];
    }
  }
  return atMm;
}
