import { describeStep, type Plan, type Show, type Step } from "@rimwise/domain";
import { hatchList } from "../../drafting/hatch-list.ts";
import type { Rows } from "../../drafting/text.ts";

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
  const texts = passes.map(({ pass }) => {
    const own = steps.filter((step) => passOf(step) === pass.number && SETTING.has(step.code));
    const said = own.map((step) => describeStep(step, show));
    if (pass.kind === "back-rout") said.push("This light one goes with the rotation.");
    return said.length === 0 ? "At the setting above." : said.join(" ");
  });
  const { items, bottomMm } = hatchList(texts, topMm);
  return { items: [{ kind: "group", of: "passes", label: "The passes", items }], bottomMm };
}

function passOf(step: Step): number | undefined {
  return "pass" in step ? step.pass : undefined;
}
