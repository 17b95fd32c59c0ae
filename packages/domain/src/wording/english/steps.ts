import type { FeedDirection, Step, StepCode } from "../../plan/steps.ts";
import type { Show } from "../show.ts";

type Sentences = { readonly [Code in StepCode]: (step: Extract<Step, { code: Code }>, show: Show) => string };

const DIRECTIONS: Readonly<Record<FeedDirection, string>> = {
  "work-right-to-left": "the work from right to left",
  "router-left-to-right": "the router from left to right as you face the edge",
  "router-clockwise-inside": "the router clockwise around the inside",
  "work-around-opening":
    "the opening's far wall past the bit from left to right, its near wall from right to left",
  "with-rotation": "with the rotation, lightly and firmly held",
};

const PASS_KINDS: Readonly<Record<Extract<Step, { code: "cut-edges" }>["passKind"], string>> = {
  "back-rout": ", the light back-rout",
  rough: "",
  finish: ", the light last one",
};

const SENTENCES: Sentences = {
  "waste-groove": ({ widthMm, depthMm }, show) =>
    `First take out most of the wood with a straight bit: a groove at most ${show.length(widthMm)} wide and ${show.length(depthMm)} deep.`,
  "mount-bit": () => "Unplug the router. Clean the collet, seat the bit, tighten, and turn it by hand.",
  "set-dial": ({ mark, rpm }, show) => `Set the dial to ${show.mark(mark)}: about ${show.rotation(rpm)}.`,
  "no-dial-to-set": ({ rpm }, show) => `This router runs at ${show.rotation(rpm)}; there is no dial to set.`,
  "set-slowest": ({ rpm }, show) =>
    `Turn the router's speed down as far as it goes: about ${show.rotation(rpm)}.`,
  "set-fastest": ({ rpm }, show) =>
    `Turn the router's speed up as far as it goes: about ${show.rotation(rpm)}.`,
  "set-height": ({ pass, heightMm, mounting }, show) =>
    mounting === "table"
      ? `${forPass(pass)}et the bit ${show.length(heightMm)} above the table.`
      : `${forPass(pass)}et the bit ${show.length(heightMm)} below the base.`,
  "set-fence": ({ pass, run, fenceMm, guide }, show) => {
    const place =
      fenceMm === 0
        ? "in line with the bit's centre"
        : `${show.length(Math.abs(fenceMm))} ${fenceMm < 0 ? "behind" : "in front of"} the bit's centre`;
    switch (guide) {
      case "fence":
        return `${forPass(pass, run)}et the fence ${place}.`;
      case "edge-guide":
        return `${forPass(pass, run)}et the edge guide ${place}.`;
      case "fence-flush-with-bearing":
        return `${forPass(pass, run)}et the fence flush with the bearing, ${place}.`;
    }
  },
  "move-over": ({ pass, run, overMm, mounting }, show) => {
    if (mounting === "table") {
      return overMm === 0
        ? `${forPass(pass, run)}et the fence for the wall of the groove that is nearest to it.`
        : `${forPass(pass, run)}et the fence ${show.length(overMm)} farther from you than for the first run: the bit widens the groove toward you.`;
    }
    return overMm === 0
      ? `${forPass(pass, run)}et the straightedge for the right-hand wall of the groove, seen along the travel.`
      : `${forPass(pass, run)}et the straightedge ${show.length(overMm)} to the left of where it lay for the first run, seen along the travel.`;
  },
  "run-idle": () =>
    "Stand aside and run the bit out of the wood. If it shakes or rings, stop: do not cut with it.",
  "cut-edges": ({ pass, passKind, edges, grain, rows, direction, feedMPerMin }, show) =>
    `Pass ${pass}${PASS_KINDS[passKind]}: cut ${edgeList(edges)}${rows > 1 ? ` in ${rows} rows` : ""} ` +
    `(${grain === "end" ? "end grain" : "long grain"}), moving ${DIRECTIONS[direction]}, ${show.feed(feedMPerMin)}.`,
  "test-piece": ({ depthMm, widthMm }, show) => {
    const sizes = [
      ...(depthMm === undefined ? [] : [`${show.length(depthMm)} deep`]),
      ...(widthMm === undefined ? [] : [`${show.length(widthMm)} wide`]),
    ];
    return `Make this cut on a test piece of the same stock and measure the cut, not the bit: it must be ${sizes.join(" and ")}. Correct the setting before the work is cut.`;
  },
  "check-collet": () => "Unplug the router and check the collet: a heavy bit works loose.",
};

/**
 * A step of the work as a sentence.
 * @example
 * describeStep({ code: "set-height", heightMm: 6, mounting: "table" }, showIn("metric")) // → "Set the bit 6 mm above the table."
 */
export function describeStep<Code extends StepCode>(step: Extract<Step, { code: Code }>, show: Show): string {
  return SENTENCES[step.code](step, show);
}

function edgeList(edges: readonly number[]): string {
  return edges.length === 1
    ? `edge ${edges[0]}`
    : `edges ${edges.slice(0, -1).join(", ")} and ${edges.at(-1)}`;
}

/** A setting made once for the whole cut names no pass. */
function forPass(pass: number | undefined, run?: number): string {
  if (pass === undefined) return "S";
  return run === undefined ? `For pass ${pass} s` : `For pass ${pass}, run ${run}, s`;
}
