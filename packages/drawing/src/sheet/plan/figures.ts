import type { Plan, PlanInput, Show } from "@rimwise/domain";
import { hatched, hatchOf } from "../../drafting/hatch.ts";
import { MARGIN_MM, PAGE_WIDTH_MM, SMALL_MM } from "../../drafting/page.ts";
import { textLine } from "../../drafting/text.ts";
import { fromAbove } from "../../picture/set-up/from-above.ts";
import { sectionOf } from "../../picture/set-up/layout.ts";
import { measuredSection } from "../../picture/set-up/measured-section.ts";
import { lengthsOf } from "../../picture/set-up/measures.ts";
import { legendOf } from "../../picture/set-up/set-up.ts";
import { path, rectangle } from "../../scene/path.ts";
import type { Item, Scene } from "../../scene/scene.ts";
import { textBox, textsOf } from "../../scene/text-box.ts";

/** What is drawn of a set-up, and what its lines mean. */
export type SetUpFigures = { readonly section: Scene; readonly above: Scene; readonly legend: string };

const SWATCH_MM = { widthMm: 7, heightMm: 3.4, stepMm: 13 };
const BESIDE_MM = 1;
const UNDER_MM = 2;

/** The section and the feed of a plan that may be run; undefined of another. */
export function setUpFigures(input: PlanInput, plan: Plan, show: Show): SetUpFigures | undefined {
  const section = plan.verdict === "do-not-run" ? undefined : sectionOf(input, plan);
  if (section === undefined) return undefined;
  const lengths = lengthsOf(section, show);
  const drawn = measuredSection(section, lengths, 1);
  const key = keyOf(plan, drawn.bottomMm + UNDER_MM);
  const isTested = lengths.some(({ isSet }) => !isSet);
  const above = fromAbove(plan, input, 1, show).items.filter(({ kind }) => kind === "group");
  const boxes = textsOf({ items: above }).map(textBox);
  return {
    section: scene("The set-up in section", [...drawn.items, ...key.items], key.bottomMm),
    above: scene("The feed, seen from above", above, Math.max(1, ...boxes.map(({ bottomMm }) => bottomMm))),
    legend: legendOf(section, drawn.scale, isTested),
  };
}

/** Which hatching is which pass. */
function keyOf({ passes }: Plan, topMm: number) {
  const perRow = Math.floor((PAGE_WIDTH_MM - 2 * MARGIN_MM) / SWATCH_MM.stepMm);
  const items = passes.flatMap(({ pass: { number } }, index): Item[] => {
    const xMm = MARGIN_MM + (index % perRow) * SWATCH_MM.stepMm;
    const yMm = topMm + Math.floor(index / perRow) * (SWATCH_MM.heightMm + BESIDE_MM);
    const box = rectangle({ xMm, yMm }, { xMm: xMm + SWATCH_MM.widthMm, yMm: yMm + SWATCH_MM.heightMm });
    const shows = { of: "swatch", number };
    const label = textLine(String(number), yMm + SMALL_MM, {
      xMm: xMm + SWATCH_MM.widthMm + BESIDE_MM,
      sizeMm: SMALL_MM,
      weight: "bold",
    });
    return [path(shows, box, "thin"), hatched(shows, box, hatchOf(number)), label];
  });
  const rows = Math.ceil(passes.length / perRow);
  return { items, bottomMm: topMm + rows * (SWATCH_MM.heightMm + BESIDE_MM) };
}

function scene(title: string, items: readonly Item[], heightMm: number): Scene {
  return { widthMm: PAGE_WIDTH_MM, heightMm, title, description: "", items };
}
