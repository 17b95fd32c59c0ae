import type { Plan } from "../../plan/plan.ts";
import type { Show } from "../show.ts";
import { describeRaisedBy, limitTitle } from "./limits.ts";
import { describeUncertainty } from "./uncertainties.ts";

/**
 * The least of a plan's limits as a sentence. A guide is for the speed that is set, which may turn out a little higher; nothing goes above a hard
 * one.
 * @example
 * const cherry = woodById("black-cherry");
 * const form = { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 };
 * const cut = { kind: "groove", depthMm: 6, edges: [{ lengthMm: 400, grain: "long" }] };
 * const router = { minRpm: 10_000, maxRpm: 22_000 };
 * const bit = { form, shankDiameterMm: 12.7, wings: 2, markedMaxRpm: 9_000 };
 * const plan = makePlan({ bit, router, mounting: "table", wood: cherry, cut, policy: DEFAULT_POLICY });
 * describeCeiling(plan, showIn("metric")) // → "Never above 9,000 rpm, by the marking on the tool."
 */
export function describeCeiling({ speed, limits }: Plan, show: Show): string {
  const never = limits[0]?.strength === "guide" ? "Never set above" : "Never above";
  return `${never} ${show.rotation(speed.ceilingRpm)}, by ${limitTitle(speed.bindingLimit)}.`;
}

/**
 * The speed of a plan as sentences: what is set and what it may come to, the ceiling and what it comes from, the next faster mark and why it is
 * not taken, and what is not known. A plan that must not be run has no speed, and its sentences say so.
 * @example
 * const cherry = woodById("black-cherry");
 * const form = { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 };
 * const cut = { kind: "groove", depthMm: 6, edges: [{ lengthMm: 400, grain: "long" }] };
 * const router = { minRpm: 10_000, maxRpm: 22_000 };
 * const bit = { form, shankDiameterMm: 12.7, wings: 2, markedMaxRpm: 9_000 };
 * const plan = makePlan({ bit, router, mounting: "table", wood: cherry, cut, policy: DEFAULT_POLICY });
 * describeSpeed(plan, showIn("metric")) // → ["No speed is given: this must not be run."]
 */
export function describeSpeed(plan: Plan, show: Show): string[] {
  const { setting, raisedBy, uncertainties } = plan.speed;
  if (setting === undefined) return ["No speed is given: this must not be run."];
  const dial = setting.mark === undefined ? "No dial" : `Dial at ${show.mark(setting.mark)}`;
  const sentences = [
    `${dial}: ${show.rotation(setting.rpm)}, actually at most ${show.rotation(setting.rpmHighest)}. The rim runs at ${show.speed(setting.rimSpeedMPerS)}.`,
    describeCeiling(plan, show),
  ];
  if (raisedBy !== undefined) sentences.push(describeRaisedBy(raisedBy, show));
  const { nextFaster } = setting;
  if (nextFaster?.speed.mark !== undefined) {
    const { mark, rpm, rpmHighest } = nextFaster.speed;
    sentences.push(
      `Not at ${show.mark(mark)}: it would run ${show.rotation(rpm)}, perhaps ${show.rotation(rpmHighest)}, over ${nextFaster.breaks.map(limitTitle).join(", ")}.`,
    );
  }
  return [...sentences, ...uncertainties.map((cost) => describeUncertainty(cost, show))];
}
