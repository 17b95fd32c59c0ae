import type { Plan, Verdict } from "../../plan/plan.ts";
import type { PlannedPass } from "../../plan/planned-pass.ts";
import type { Card } from "../card.ts";
import type { Show } from "../show.ts";
import { describeAssumption } from "./assumptions.ts";
import { describeFinding } from "./findings.ts";
import { describeLimit, limitTitle } from "./limits.ts";
import { describeMountingReason } from "./mounting.ts";
import { ADVICE, describePrecaution } from "./precautions.ts";
import { describeSpeed } from "./speeds.ts";
import { describeStep } from "./steps.ts";

/** A verdict as it is called across a workshop. */
const VERDICTS: Readonly<Record<Verdict, string>> = {
  run: "Run",
  "run-with-care": "Run with care",
  "do-not-run": "Do not run",
};

/** The rest never comes near. */
const LIMITS_SHOWN = 5;

/**
 * What to call a verdict where it stands alone.
 * @example
 * verdictTitle("do-not-run") // → "Do not run"
 */
export function verdictTitle(verdict: Verdict): string {
  return VERDICTS[verdict];
}

/**
 * A plan as a card: the verdict first, then what to do, then why. `madeFrom` says what it was computed from, if that is known. A plan that must not
 * be run has no speed, no limits and no passes on it.
 * @example
 * const cherry = woodById("black-cherry");
 * const form = { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 };
 * const cut = { kind: "groove", depthMm: 6, edges: [{ lengthMm: 400, grain: "long" }] };
 * const router = { minRpm: 10_000, maxRpm: 22_000 };
 * const bit = { form, shankDiameterMm: 12.7, wings: 2, markedMaxRpm: 9_000 };
 * const plan = makePlan({ bit, router, mounting: "table", wood: cherry, cut, policy: DEFAULT_POLICY });
 * planCard("Shelf", plan, showIn("metric")).sections[0].lines[0] // → "DO NOT RUN"
 */
export function planCard(title: string, plan: Plan, show: Show, madeFrom?: string): Card {
  const sections = [
    {
      label: "verdict",
      lines: [
        VERDICTS[plan.verdict].toUpperCase(),
        ...plan.findings.map((finding) => describeFinding(finding, show)),
      ],
    },
    {
      label: "mounting",
      lines: plan.mounting.reasons.map((reason) => describeMountingReason(reason, show)),
    },
    { label: "speed", lines: describeSpeed(plan, show) },
    {
      label: "limits",
      lines: plan.verdict === "do-not-run" ? [] : limitLines(plan, show),
    },
    { label: "passes", lines: plan.passes.map((pass) => describePass(pass, show)) },
    {
      label: "work",
      lines: plan.steps.map((step, index) => `${index + 1}. ${describeStep(step, show)}`),
    },
    { label: "mind", lines: plan.precautions.map((each) => describePrecaution(each, show)) },
    { label: "assumed", lines: plan.assumptions.map((each) => describeAssumption(each, show)) },
    { label: "first of all", lines: [ADVICE] },
    { label: "made from", lines: madeFrom === undefined ? [] : [madeFrom] },
  ];
  return { title, sections };
}

/** Of a plan that must not be run none are given: a speed beside them would be taken for one that is allowed. */
function limitLines({ limits }: Plan, show: Show): string[] {
  return limits.slice(0, LIMITS_SHOWN).map((limit, index) => {
    const binds = index === 0 ? "◄" : " ";
    const said = `${limitTitle(limit.name)} (${limit.strength}): ${describeLimit(limit, show)}`;
    return `${show.rotation(limit.rpm).padStart(10)} ${binds} ${said}`;
  });
}

function describePass({ pass, feed, secondsPerEdge, uses }: PlannedPass, show: Show): string {
  const held = uses.reduce((most, use) => (use.ratio > most.ratio ? use : most));
  const seconds = secondsPerEdge.map((each) => each.toFixed(0)).join(", ");
  return (
    `${pass.number} ${pass.kind.padEnd(6)} height ${show.length(pass.heightMm)}, fence ${show.length(pass.fenceMm)}, removes ${show.area(pass.geometry.removedAreaMm2)}, ` +
    `${show.feed(feed.feedMPerMin)}, seconds per edge ${seconds}; held by ${held.name} (${show.percent(held.ratio)} used)`
  );
}
