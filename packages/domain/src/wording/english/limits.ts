import type { LimitFinding, LimitName } from "../../limit/ceiling.ts";
import type { RaisedBy } from "../../limit/limit.ts";
import type { Show } from "../show.ts";

type Sentences = {
  readonly [Name in LimitName]: (
    limit: Extract<LimitFinding, { name: Name }>,
    rpm: string,
    show: Show,
  ) => string;
};

const BASIS: Sentences = {
  "marked-maximum": (_, rpm) => `The tool is marked for at most ${rpm}.`,
  "rim-speed": ({ values: { diameterMm, rimSpeedMaxMPerS } }, rpm, show) =>
    `A rim ${show.length(diameterMm)} across reaches ${show.speed(rimSpeedMaxMPerS)} at ${rpm}.`,
  "critical-speed": ({ values: { shankDiameterMm, overhangMm, rigidRpm } }, rpm, show) =>
    `On a ${show.length(shankDiameterMm)} shank, its weight ${show.length(overhangMm)} out of the collet, the bit would ring at ` +
    `${show.rotation(rigidRpm)} if the collet were rigid; with what collets give, it stays clear up to ${rpm}.`,
  unbalance: (
    { values: { massHighG, runOutMm, unbalanceForceMaxN, balanceGradeMaxMmPerS, heldBy } },
    rpm,
    show,
  ) =>
    `${show.mass(massHighG)} with ${show.length(runOutMm)} run-out pulls to the side, the more the nearer to where the shank swings; at ${rpm} it reaches ` +
    (heldBy === "force" ? `${show.force(unbalanceForceMaxN)}.` : `balance grade G ${balanceGradeMaxMmPerS}.`),
  "shank-stress": ({ values: { shankDiameterMm, leftMPa } }, rpm, show) =>
    `Beside the heaviest pass the ${show.length(shankDiameterMm)} shank has ${leftMPa.toFixed(0)} MPa left for the pull of unbalance, reached at ${rpm}.`,
  "body-stress": ({ values: { diameterMm, bodyStressMaxMPa } }, rpm, show) =>
    `A body ${show.length(diameterMm)} across reaches ${bodyStressMaxMPa} MPa from spinning alone at ${rpm}.`,
  "tip-retention": ({ values: { tipMassAssumedG, tipForceMaxN } }, rpm, show) =>
    `A tip of ${show.mass(tipMassAssumedG)} at the rim pulls on its braze with ${show.force(tipForceMaxN)} at ${rpm}.`,
  policy: (_, rpm) => `The policy in force allows at most ${rpm}.`,
  tested: (_, rpm) => `Speed trials of this bit in this router allow ${rpm}.`,
  "diameter-chart": ({ values: { diameterMm } }, rpm, show) =>
    `The trade's chart gives a bit ${show.length(diameterMm)} across at most ${rpm}.`,
  material: ({ values: { woodName } }, rpm) =>
    `${woodName} melts: it is cut at no more than ${rpm}, with the feed kept up.`,
  router: (_, rpm) => `The router turns no faster than ${rpm}.`,
};

const TITLES: Readonly<Record<LimitName, string>> = {
  "marked-maximum": "the marking on the tool",
  "rim-speed": "the rim speed",
  "critical-speed": "the critical speed",
  unbalance: "the pull of unbalance",
  "shank-stress": "the stress in the shank",
  "body-stress": "the stress in the body",
  "tip-retention": "the pull on the tips",
  policy: "the policy in force",
  tested: "the speed trials",
  "diameter-chart": "the chart by diameter",
  material: "the material's own speed",
  router: "the router's top speed",
};

type RaiseSentences = {
  readonly [Code in RaisedBy["code"]]: (raised: Extract<RaisedBy, { code: Code }>, show: Show) => string;
};

const RAISED_BY: RaiseSentences = {
  "smaller-bit": () => "A bit of smaller diameter may turn faster.",
  "ask-in-charge": () => "Only the person in charge may change it.",
  "faster-router": () => "Only another router turns faster.",
  "less-run-out": ({ runOutMm }, show) =>
    `Measure the run-out in the collet, clean or change the collet: at ${show.length(runOutMm)} more speed is allowed.`,
  "thicker-shank": ({ shankDiameterMm, factor }, show) =>
    `A shank of ${show.length(shankDiameterMm)} raises the critical speed ${factor.toFixed(1)} times.`,
  "less-stick-out": () => "Seat the shank deeper: a shorter overhang rings at a higher speed.",
  "try-one-step-faster": () => "A trial one step faster that runs free of vibration raises it.",
};

/**
 * Where a limit's figure comes from, as one sentence.
 * @example
 * const limit = { name: "rim-speed", strength: "hard", rpm: 12_030, values: { diameterMm: 88.9, rimSpeedMaxMPerS: 56 } };
 * describeLimit(limit, showIn("metric")) // → "A rim 88.9 mm across reaches 56 m/s at 12,030 rpm."
 */
export function describeLimit<Name extends LimitName>(
  limit: Extract<LimitFinding, { name: Name }>,
  show: Show,
): string {
  return BASIS[limit.name](limit, show.rotation(limit.rpm), show);
}

/**
 * What to call a limit in the middle of a sentence.
 * @example
 * limitTitle("rim-speed") // → "the rim speed"
 */
export function limitTitle(name: LimitName): string {
  return TITLES[name];
}

/**
 * What would lift the binding limit, as a sentence.
 * @example
 * describeRaisedBy({ code: "faster-router" }, showIn("metric")) // → "Only another router turns faster."
 */
export function describeRaisedBy<Code extends RaisedBy["code"]>(
  raised: Extract<RaisedBy, { code: Code }>,
  show: Show,
): string {
  return RAISED_BY[raised.code](raised, show);
}
