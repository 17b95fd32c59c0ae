import {
  ADVICE,
  describeGuide,
  describeStep,
  type Plan,
  type PlanInput,
  type Show,
  VERDICT_MEANINGS,
} from "@rimwise/domain";
import { MARGIN_MM, PAGE_WIDTH_MM, SMALL_MM } from "../../drafting/page.ts";
import { scaleText } from "../../drafting/scale.ts";
import { heading, paragraphs, type Rows } from "../../drafting/text.ts";
import type { Item, Scene } from "../../scene/scene.ts";
import { type DrawnUnits, definePicture } from "../define.ts";
import { fromAbove } from "./from-above.ts";
import { type Section, sectionOf } from "./layout.ts";
import { measuredSection } from "./measured-section.ts";
import { lengthsOf } from "./measures.ts";
import { beforePasses, passList } from "./pass-list.ts";
import { reasonsOf, refused } from "./refused.ts";

/** What a set-up is drawn of: a plan and what it was made from. */
export type SetUpDrawn = {
  readonly input: PlanInput;
  readonly plan: Plan;
  /** What the shop calls the cut. */
  readonly name: string;
  readonly units: DrawnUnits;
};

/** A plan at the machine. One that must not be run is drawn without any setting. */
export const setUpPicture = definePicture<"set-up", SetUpDrawn>({
  kind: "set-up",
  meaning:
    "A plan at the machine: what is set and where it is measured, each pass as a layer, and which way to feed.",
  draw,
});

const SMALL = { sizeMm: SMALL_MM };

function draw({ input, plan, name }: SetUpDrawn, show: Show): Scene {
  const section = sectionOf(input, plan);
  const head = heading(name);
  const verdict = paragraphs([VERDICT_MEANINGS[plan.verdict]], head.bottomMm);
  const body =
    section === undefined || plan.verdict === "do-not-run"
      ? refused(plan, verdict.bottomMm + 2, show)
      : atTheMachine(section, verdict.bottomMm + 1, show);
  const advice = paragraphs([ADVICE], body.bottomMm + 1, SMALL);
  return {
    widthMm: PAGE_WIDTH_MM,
    heightMm: advice.bottomMm + MARGIN_MM,
    title: `Set-up: ${name}`,
    description: described(plan, show).join(" "),
    items: [...head.items, ...verdict.items, ...body.items, ...advice.items],
  };
}

function atTheMachine(section: Section, topMm: number, show: Show): Rows {
  const { plan, input } = section;
  const lengths = lengthsOf(section, show);
  const drawn = measuredSection(section, lengths, topMm);
  const legend = paragraphs(
    [
      legendOf(
        section,
        drawn.scale,
        lengths.some(({ isSet }) => !isSet),
      ),
    ],
    drawn.bottomMm,
    SMALL,
  );
  const once = paragraphs(beforePasses(plan, show), legend.bottomMm + 1);
  const passes = passList(plan, once.bottomMm + 0.5, show);
  const above = fromAbove(plan, input, passes.bottomMm + 1.5, show);
  const last = plan.steps.filter(({ code }) => code === "test-piece").map((step) => describeStep(step, show));
  const test = paragraphs(last, above.bottomMm + 1);
  const items: Item[] = [drawn, legend, once, passes, above, test].flatMap((rows) => rows.items);
  return { items, bottomMm: test.bottomMm };
}

/** What the lines mean, and which face is down. */
export function legendOf({ input, isTable, plan }: Section, scale: number, hasTest: boolean): string {
  const face = input.cut.work?.faceDown;
  const lies = isTable ? "on the table" : "on the bench";
  return [
    `Scale ${scaleText(scale)}.`,
    face === undefined
      ? `The same face down each time, ${lies}.`
      : `The ${face === "best" ? "best" : "other"} face is down, ${lies}.`,
    ...(plan.guide === undefined ? [] : [describeGuide(plan.guide)]),
    `Bold sizes are set for the last pass${hasTest ? "; the others are what the test piece must measure" : ""}.`,
    "Dashed: the work as it was, and what stands beyond the section. Guards are left out of the drawing, never off the machine.",
  ].join(" ");
}

function described(plan: Plan, show: Show): string[] {
  if (plan.verdict === "do-not-run")
    return ["Do not run this cut.", ...reasonsOf(plan.findings, show), ADVICE];
  return [...plan.steps.map((step) => describeStep(step, show)), ADVICE];
}
