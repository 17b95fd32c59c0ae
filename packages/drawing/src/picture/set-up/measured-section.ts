import { MEASURE_ROW_MM, type Measured, measureAcross, measureUp } from "../../drafting/measure.ts";
import { MARGIN_MM, PAGE_WIDTH_MM } from "../../drafting/page.ts";
import type { Rows } from "../../drafting/text.ts";
import { onPaper } from "../../scene/frame.ts";
import type { GroupItem, Item, MeasureItem } from "../../scene/scene.ts";
import { bitInPlace, ground } from "./ground.ts";
import { guideShape } from "./guide-shape.ts";
import { layers } from "./layers.ts";
import { leftEndMm, placeOf, type Section, type SectionPlace } from "./layout.ts";
import type { Length } from "./measures.ts";
import type { Beside } from "./pass-numbers.ts";

/** From the drawing to the dimension lines beside it, mm. */
const BESIDE_MM = 4;
/** The axis and a fence stand out past the drawing so far. */
const PAST_MM = 5.5;

/** The section with its dimensions, under `topMm`: those across on the far side of the work, what is set on the left, what is checked on the right. */
export function measuredSection(
  section: Section,
  lengths: readonly Length[],
  topMm: number,
): Rows & { readonly scale: number } {
  const across = lengths.filter(({ along }) => along === "x");
  const rowsMm = across.length * MEASURE_ROW_MM + (across.length > 0 ? 1 : 0);
  const place = placeOf(section, topMm + PAST_MM + (section.isTable ? rowsMm : 0));
  const measures = lengths
    .filter(({ along }) => along === "z")
    .map((length) => upright(length, section, place));
  const lastRowMm = section.isTable ? topMm : place.bottomMm + PAST_MM;
  across.forEach((length, index) => {
    measures.push(
      measured(length, measureAcross(onPage(length, place), lastRowMm + (index + 1) * MEASURE_ROW_MM - 1)),
    );
  });
  const group: GroupItem = {
    kind: "group",
    of: "section",
    label: `Section square to the feed, the ${section.isTable ? "table below" : "router's base above"}`,
    frame: place.frame,
    items: drawn(section, place, measures),
  };
  const bottomMm = place.bottomMm + PAST_MM + (section.isTable ? 0 : rowsMm);
  return { items: [group], bottomMm, scale: place.scale };
}

function drawn(section: Section, place: SectionPlace, measures: readonly Item[]): Item[] {
  return [
    ...guideShape(section, place),
    ...layers(section.profiles, place.frame, besideCut(section, place)),
    ...ground(section, place),
    ...bitInPlace(section, place),
    ...measures,
  ];
}

/** The uncut work to the right of all that the bit reaches, on paper. */
function besideCut({ standing, rimRadiusMm, workMm, sections }: Section, { frame }: SectionPlace): Beside {
  const cutMm = Math.max(0, standing.axisMm + rimRadiusMm);
  const [near, far] = [onPaper(frame, cutMm, 0), onPaper(frame, workMm[1], sections.thicknessMm)];
  return {
    leftMm: near.xMm,
    rightMm: far.xMm,
    topMm: Math.min(near.yMm, far.yMm),
    bottomMm: Math.max(near.yMm, far.yMm),
  };
}

function upright(length: Length, section: Section, place: SectionPlace): MeasureItem {
  const { frame } = place;
  if (length.isSet) {
    const lineMm = onPaper(frame, leftEndMm(section), 0).xMm - BESIDE_MM;
    return measured(length, measureUp(onPage(length, place), lineMm, "left", lineMm - MARGIN_MM));
  }
  const lineMm = onPaper(frame, section.workMm[1], 0).xMm + BESIDE_MM;
  return measured(
    length,
    measureUp(onPage(length, place), lineMm, "right", PAGE_WIDTH_MM - MARGIN_MM - lineMm),
  );
}

function onPage({ name, valueMm, text, from, to }: Length, { frame }: SectionPlace): Measured {
  return { name, valueMm, text, from: onPaper(frame, ...from), to: onPaper(frame, ...to) };
}

/** What is set is said in bold. */
function measured({ isSet }: Length, measure: MeasureItem): MeasureItem {
  return isSet ? { ...measure, label: { ...measure.label, weight: "bold" } } : measure;
}
