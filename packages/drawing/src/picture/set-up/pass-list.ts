import { describeStep, type Plan, type Show, type Step } from "@rimwise/domain";
import { hatched } from "../../drafting/hatch.ts";
import { MARGIN_MM, PAGE_WIDTH_MM, SMALL_MM } from "../../drafting/page.ts";
import { paragraph, type Rows, textLine } from "../../drafting/text.ts";
import { path, rectangle } from "../../scene/path.ts";
import type { Item } from "../../scene/scene.ts";
import { hatchOf } from "./layers.ts";

const SWATCH_MM = 7;
const TEXT_MM = MARGIN_MM + SWATCH_MM + 7;
const ROW_MM = 0.6;

/** The steps that set the machine. */
const SETTING: ReadonlySet<Step["code"]> = new Set([
  "set-height",
  "set-height-over-work",
  "set-fence",
  "set-fence-to-groove",
  "set-fence-halves",
  "move-over",
]);

/** What is put in place or set once, before the first pass, each as its step says it. */
export function beforePasses({ steps }: Plan, show: Show): string[] {
  const once: readonly Step["code"][] = [
    "waste-groove",
    "set-dial",
    "no-dial-to-set",
    "set-slowest",
    "set-fastest",
    "fix-template",
    "fix-bushing-template",
    "clamp-straightedge",
    "fix-pin",
    "clamp-on-sled",
    "lay-rails",
  ];
  return steps
    .filter((step) => once.includes(step.code) || (SETTING.has(step.code) && passOf(step) === undefined))
    .map((step) => describeStep(step, show));
}

/** One row for each pass: its hatch, its number, and what is set for it. */
export function passList({ passes, steps }: Plan, topMm: number, show: Show): Rows {
  const items: Item[] = [];
  let bottomMm = topMm;
  for (const { pass } of passes) {
    const own = steps.filter((step) => passOf(step) === pass.number && SETTING.has(step.code));
    const said = own.map((step) => describeStep(step, show));
    if (pass.kind === "back-rout") said.push("This light one goes with the rotation.");
    const text = said.length === 0 ? "At the setting above." : said.join(" ");
    const rows = paragraph(text, bottomMm + ROW_MM, {
      xMm: TEXT_MM,
      widthMm: PAGE_WIDTH_MM - MARGIN_MM - TEXT_MM,
      sizeMm: SMALL_MM,
    });
    items.push(...swatch(pass.number, bottomMm + ROW_MM), ...rows.items);
    bottomMm = rows.bottomMm + ROW_MM;
  }
  return { items: [{ kind: "group", of: "passes", label: "The passes", items }], bottomMm };
}

function swatch(number: number, topMm: number): Item[] {
  const box = rectangle(
    { xMm: MARGIN_MM, yMm: topMm + 0.3 },
    { xMm: MARGIN_MM + SWATCH_MM, yMm: topMm + SMALL_MM + 0.3 },
  );
  const label = textLine(String(number), topMm + SMALL_MM * 0.928, {
    xMm: TEXT_MM - 1.5,
    anchor: "end",
    sizeMm: SMALL_MM,
    weight: "bold",
  });
  return [
    path({ of: "swatch", number }, box, "thin"),
    hatched({ of: "swatch", number }, box, hatchOf(number)),
    label,
  ];
}

function passOf(step: Step): number | undefined {
  return "pass" in step ? step.pass : undefined;
}
