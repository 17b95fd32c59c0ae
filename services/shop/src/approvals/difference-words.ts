import type { PlanAnswer } from "../plans/answer-schema.ts";

type Sentence = { readonly text: string };
type Figure = "heightMm" | "fenceMm" | "feedMPerMin";

const FIGURES: readonly (readonly [Figure, string, string])[] = [
  ["heightMm", "height", "mm"],
  ["fenceMm", "fence", "mm"],
  ["feedMPerMin", "feed", "m/min"],
];

const VERDICTS: Readonly<Record<string, string>> = {
  run: "run",
  "run-with-care": "run with care",
  "do-not-run": "do not run",
};

/** How two plans for one wood differ, in sentences a person decides by: what to set, what to do, what is said. Empty: in remarks only. */
export function differenceInWords(before: PlanAnswer, after: PlanAnswer): string[] {
  return [
    ...changed("Verdict", verdictOf(before), verdictOf(after)),
    ...changed("Cleared for", clearanceOf(before), clearanceOf(after)),
    ...changed("Dial mark", markOf(before), markOf(after)),
    ...changed("Speed", rpmOf(before.speed.rpm), rpmOf(after.speed.rpm)),
    ...changed("Ceiling", rpmOf(before.speed.ceilingRpm), rpmOf(after.speed.ceilingRpm)),
    ...passesChanged(before, after),
    ...sentencesChanged(before.precautions, after.precautions),
    ...sentencesChanged(before.findings, after.findings),
  ];
}

function passesChanged(before: PlanAnswer, after: PlanAnswer): string[] {
  const inWood = `in ${after.wood.name.toLowerCase()}`;
  if (before.passes.length !== after.passes.length) {
    return changed(`Passes ${inWood}`, String(before.passes.length), String(after.passes.length));
  }
  return after.passes.flatMap((pass, index) => {
    const old = before.passes[index];
    if (old === undefined) return [];
    return FIGURES.flatMap(([name, word, unit]) =>
      changed(`Pass ${pass.number} ${inWood}, ${word}`, `${old[name]} ${unit}`, `${pass[name]} ${unit}`),
    );
  });
}

function sentencesChanged(before: readonly Sentence[], after: readonly Sentence[]): string[] {
  const textsOf = (list: readonly Sentence[]) => new Set(list.map(({ text }) => text));
  const [old, young] = [textsOf(before), textsOf(after)];
  return [
    ...[...young].filter((text) => !old.has(text)).map((text) => `Now: ${text}`),
    ...[...old].filter((text) => !young.has(text)).map((text) => `No longer: ${text}`),
  ];
}

function changed(what: string, before: string, after: string): string[] {
  return before === after ? [] : [`${what}: ${before} before, ${after} now.`];
}

function verdictOf({ verdict }: PlanAnswer): string {
  return VERDICTS[verdict] ?? verdict;
}

function clearanceOf({ mounting }: PlanAnswer): string {
  return mounting.allowed.replaceAll("-", " ");
}

function markOf({ speed: { mark } }: PlanAnswer): string {
  return mark === null ? "none" : String(mark);
}

function rpmOf(rpm: number | null): string {
  return rpm === null ? "none" : `${rpm.toLocaleString("en-GB")} rpm`;
}
