import type { LimitFinding, LimitName } from "../../limit/ceiling.ts";
import type { RaisedBy } from "../../limit/limit.ts";
import type { Show } from "../show.ts";

/** Every value a limit's sentence may speak of; a limit gives those it has. */
const VALUES = {
  diameterMm: Number.NaN,
  rimSpeedMaxMPerS: Number.NaN,
  massHighG: Number.NaN,
  runOutMm: Number.NaN,
  unbalanceForceMaxN: Number.NaN,
  balanceGradeMaxMmPerS: Number.NaN,
  isByForce: Number.NaN,
  shankDiameterMm: Number.NaN,
  overhangMm: Number.NaN,
  rigidRpm: Number.NaN,
  leftMPa: Number.NaN,
  bodyStressMaxMPa: Number.NaN,
  tipMassAssumedG: Number.NaN,
  tipForceMaxN: Number.NaN,
};

type Spoken = (values: typeof VALUES, rpm: string, show: Show) => string;

const BASIS: Readonly<Record<LimitName, Spoken>> = {
  "marked-maximum": (_, rpm) => `The tool is marked for at most ${rpm}.`,
  "rim-speed": ({ diameterMm, rimSpeedMaxMPerS }, rpm, show) =>
    `A rim ${show.length(diameterMm)} across reaches ${show.speed(rimSpeedMaxMPerS)} at ${rpm}.`,
  "critical-speed": ({ shankDiameterMm, overhangMm, rigidRpm }, rpm, show) =>
    `On a ${show.length(shankDiameterMm)} shank, its weight ${show.length(overhangMm)} out of the collet, the bit would ring at ` +
    `${show.rotation(rigidRpm)} if the collet were rigid; with what collets give, it stays clear up to ${rpm}.`,
  unbalance: ({ massHighG, runOutMm, unbalanceForceMaxN, balanceGradeMaxMmPerS, isByForce }, rpm, show) =>
    `${show.mass(massHighG)} with ${show.length(runOutMm)} run-out pulls to the side; at ${rpm} it reaches ` +
    (isByForce === 1 ? `${show.force(unbalanceForceMaxN)}.` : `balance grade G ${balanceGradeMaxMmPerS}.`),
  "shank-stress": ({ shankDiameterMm, leftMPa }, rpm, show) =>
    `Beside the heaviest pass the ${show.length(shankDiameterMm)} shank has ${leftMPa.toFixed(0)} MPa left for the pull of unbalance, reached at ${rpm}.`,
  "body-stress": ({ diameterMm, bodyStressMaxMPa }, rpm, show) =>
    `A body ${show.length(diameterMm)} across reaches ${bodyStressMaxMPa} MPa from spinning alone at ${rpm}.`,
  "tip-retention": ({ tipMassAssumedG, tipForceMaxN }, rpm, show) =>
    `A tip of ${show.mass(tipMassAssumedG)} at the rim pulls on its braze with ${show.force(tipForceMaxN)} at ${rpm}.`,
  policy: (_, rpm) => `The policy in force allows at most ${rpm}.`,
  tested: (_, rpm) => `Speed trials of this bit in this router allow ${rpm}.`,
  "diameter-chart": ({ diameterMm }, rpm, show) =>
    `The trade's chart gives a bit ${show.length(diameterMm)} across at most ${rpm}.`,
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

/** Where a limit's figure comes from, as one sentence. */
export function describeLimit({ name, rpm, values }: LimitFinding, show: Show): string {
  return BASIS[name]({ ...VALUES, ...values }, show.rotation(rpm), show);
}

/** What to call a limit in the middle of a sentence. */
export function limitTitle(name: LimitName): string {
  return TITLES[name];
}

/** What would lift the binding limit, as a sentence. */
export function describeRaisedBy<Code extends RaisedBy["code"]>(
  raised: Extract<RaisedBy, { code: Code }>,
  show: Show,
): string {
  return RAISED_BY[raised.code](raised, show);
}
