import type { Plan } from "@rimwise/client";

const WIDTH = 96;
const LABEL_WIDTH = 13;

/** A plan as a card for the terminal: the verdict first, then what to do, then why. */
export function planCard(title: string, plan: Plan): string {
  return [
    `┌${"─".repeat(WIDTH)}`,
    `│ ${title}`,
    `├${"─".repeat(WIDTH)}`,
    ...section("verdict", [VERDICTS[plan.verdict], ...plan.findings.map(({ text }) => text)]),
    ...section(
      "mounting",
      plan.mounting.reasons.map(({ text }) => text),
    ),
    ...section("speed", speedLines(plan)),
    ...section("limits", plan.limits.slice(0, LIMITS_SHOWN).map(limitLine)),
    ...section("passes", plan.passes.map(passLine)),
    ...section(
      "work",
      plan.steps.map(({ number, text }) => `${number}. ${text}`),
    ),
    ...section(
      "mind",
      plan.precautions.map(({ text }) => text),
    ),
    ...section(
      "assumed",
      plan.assumptions.map(({ text }) => text),
    ),
    ...section("first of all", [plan.advice]),
    ...section("made from", [`${plan.digest.slice(0, 23)}… by engine ${plan.engineVersion}`]),
    `└${"─".repeat(WIDTH)}`,
  ].join("\n");
}

/** The rest never comes near; the service gives all of them. */
const LIMITS_SHOWN = 5;

const VERDICTS: Readonly<Record<Plan["verdict"], string>> = {
  run: "RUN",
  "run-with-care": "RUN WITH CARE",
  "do-not-run": "DO NOT RUN",
};

function speedLines({ speed }: Plan): string[] {
  const ceiling = `Ceiling ${whole(speed.ceilingRpm)} rpm, from ${speed.bindingLimit}.`;
  if (speed.rpm === null) return [`${ceiling} No speed is given: this must not be run.`];
  const mark = speed.mark === null ? "no dial" : `dial at ${speed.mark}`;
  const lines = [
    `${mark}: ${whole(speed.rpm)} rpm, actually at most ${whole(speed.rpmHighest)}; rim ${speed.rimSpeedMPerS} m/s (${speed.rimSpeedMph} mph)`,
    ceiling,
  ];
  if (speed.raisedBy !== null) lines.push(speed.raisedBy.text);
  const { nextFaster } = speed;
  if (nextFaster?.mark) {
    const { mark, rpm, rpmHighest, breaks } = nextFaster;
    lines.push(
      `At ${mark} it would run ${whole(rpm)} rpm, perhaps ${whole(rpmHighest)}: over ${breaks.join(", ")}.`,
    );
  }
  return [...lines, ...speed.uncertainties.map(({ text }) => text)];
}

function limitLine({ rpm, name, strength, isBinding: binds, basis }: Plan["limits"][number]): string {
  return `${whole(rpm).padStart(6)} ${binds ? "◄" : " "} ${name} (${strength}): ${basis}`;
}

function passLine(pass: Plan["passes"][number]): string {
  const seconds = pass.secondsPerEdge.map((each) => each.toFixed(0)).join(", ");
  const held = pass.uses.find(({ constraint }) => constraint === pass.heldBy);
  return (
    `${pass.number} ${pass.kind.padEnd(6)} height ${pass.heightMm} mm, fence ${pass.fenceMm} mm, removes ${pass.removedAreaMm2} mm², ` +
    `${pass.feedMPerMin} m/min, seconds per edge ${seconds}; held by ${pass.heldBy} (${held?.percent ?? 0} % used)`
  );
}

function whole(value: number | null): string {
  return (value ?? 0).toLocaleString("en");
}

function section(label: string, lines: readonly string[]): string[] {
  const wrapped = lines.flatMap((line) => wrap(line, WIDTH - LABEL_WIDTH - 2));
  return wrapped.map((line, index) => `│ ${(index === 0 ? label : "").padEnd(LABEL_WIDTH)}${line}`);
}

function wrap(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line !== "" && line.length + 1 + word.length > width) {
      lines.push(line);
      line = `  ${word}`;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  return [...lines, line];
}
