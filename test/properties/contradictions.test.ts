import { formOutline, GUIDES, woodForBearingMm } from "@rimwise/domain";
import { expect, test } from "vitest";
import { type Planned, randomPlans } from "./random-plans.ts";

/** `pnpm fuzz` reads many more. */
const COUNT = Number(process.env["CONTRADICTION_PLANS"] ?? 3000);

/** What no plan may say together. Common practice, or plain contradiction. */
const PAIRS: readonly (readonly [string, string])[] = [
  // Leave the fence off; set the fence.
  ...together("starting-pin", [
    "set-fence",
    "close-the-fence",
    "fence-and-pilot",
    "tall-fence",
    "feather-boards",
  ]),
  ...together("starting-pin", ["fence-behind-bit", "set-fence-halves", "set-fence-to-groove"]),
  ...together("fix-pin", ["set-fence", "close-the-fence", "fence-and-pilot", "tall-fence"]),
  // Work between bit and fence; a groove along a fence.
  ["never-trap-the-work", "fence-behind-bit"],
  ["never-trap-the-work", "set-fence-to-groove"],
  // With the rotation; against it.
  ["with-rotation", "feed-against-rotation"],
  // In the hands; on a table.
  ...together("handheld", ["guard-and-push-blocks", "close-the-fence", "fence-and-pilot", "starting-pin"]),
  ...together("handheld", ["tall-fence", "feather-boards", "clamp-on-sled", "work-clamped-on-sled"]),
  ...together("handheld", ["fence-behind-bit", "fix-pin", "set-fence-halves", "never-trap-the-work"]),
  ...together("table", ["both-hands", "support-the-base", "straightedge-on-left", "guided-edge-on-right"]),
  ...together("table", ["support-both-ends", "clamp-straightedge", "lay-rails", "fix-bushing-template"]),
  // Clamped on a sled; held by feather boards, or cut on a wide board.
  ...together("clamp-on-sled", ["feather-boards", "narrow-stock"]),
  // Do not lift; lift. The bit enters at its own hole; waste a groove first.
  ["lifts", "never-lifts"],
  ["enters-at-hole", "waste-groove"],
  ["plunges", "never-plunges"],
  // A bearing on a template; a fence.
  ...together("fix-template", ["set-fence", "close-the-fence", "fence-and-pilot"]),
  // A bushing on a template; a fence, a straightedge or a bearing.
  ...together("fix-bushing-template", ["set-fence", "clamp-straightedge", "fix-pin", "bearing-on-template"]),
  // Light last; all at once.
  ["light-last", "one-pass"],
  // Refused; to be followed.
  ["do-not-run", "cut-edges"],
  ["do-not-run", "set-height"],
];

function together(one: string, others: readonly string[]): (readonly [string, string])[] {
  return others.map((other) => [one, other]);
}

test(`${COUNT} plans say nothing that contradicts something else they say`, { timeout: 300_000 }, () => {
  const found = new Map<string, string>();
  for (const planned of randomPlans(7, COUNT)) {
    const said = sayingsOf(planned);
    for (const [one, other] of PAIRS) {
      if (said.has(one) && said.has(other)) found.set(`${one} + ${other}`, JSON.stringify(planned.input));
    }
  }
  expect(Object.fromEntries(found)).toEqual({});
});

test(`${COUNT} plans run no bearing without wood`, { timeout: 300_000 }, () => {
  const onWork: string[] = GUIDES.filter(({ runsOnWork }) => runsOnWork).map(({ name }) => name);
  for (const { input, plan } of randomPlans(11, COUNT)) {
    const last = plan.passes.at(-1)?.pass;
    const { thicknessMm = 19 } = "thicknessMm" in input.cut ? input.cut : {};
    if (last === undefined || !onWork.includes(plan.guide ?? "") || input.cut.kind === "rabbet") continue;
    const woodMm = woodForBearingMm(formOutline(input.bit.form), { ...last, thicknessMm });
    if (woodMm !== undefined) expect([woodMm >= 2, input]).toEqual([true, input]);
  }
});

/** What each way into a stopped groove and out of it amounts to. */
const WAYS = {
  plunge: ["plunges", "lifts"],
  "drilled-hole": ["never-plunges", "lifts"],
  "plunge-in-opening": ["plunges", "lifts"],
  "hole-in-opening": ["never-plunges", "lifts"],
  "back-out": ["never-lifts"],
  "own-hole": ["enters-at-hole"],
} as const;

/** What a plan says, by the codes of its sentences and by what some of them mean. */
function sayingsOf({ input, plan }: Planned): Set<string> {
  const said = new Set<string>([input.mounting, plan.verdict]);
  for (const { code } of plan.findings) said.add(code);
  for (const precaution of plan.precautions) {
    said.add(precaution.code);
    if (precaution.code === "stopped-groove") for (const each of WAYS[precaution.way]) said.add(each);
  }
  for (const step of plan.steps) {
    said.add(step.code);
    if (step.code === "cut-edges" && step.passKind === "finish" && step.pass > 1) said.add("light-last");
    if (step.code === "cut-edges") said.add(step.direction);
  }
  if (plan.findings.some(({ code }) => code === "feed-only")) said.add("never-lifts");
  if (plan.passes.length === 1) said.add("one-pass");
  return said;
}
