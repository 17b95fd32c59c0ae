import type { Plan } from "../../plan/plan.ts";
import type { Show } from "../show.ts";
import { describeRaisedBy, limitTitle } from "./limits.ts";
import { describeUncertainty } from "./uncertainties.ts";

/**
 * The least of a plan's limits as a sentence. A guide is for the speed that is set, which may turn out a little higher; nothing goes above a hard
 * one.
 */
export function describeCeiling({ speed, limits }: Plan, show: Show): string {
  const never = limits[0]?.strength === "guide" ? "Never set above" : "Never above";
  return `${never} ${show.rotation(speed.ceilingRpm)}, by ${limitTitle(speed.bindingLimit)}.`;
}

/**
 * The speed of a plan as sentences: what is set and what it may come to, the ceiling and what it comes from, the next faster mark and why it is
 * not taken, and what is not known. A plan that must not be run has no speed, and its sentences say so.
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
