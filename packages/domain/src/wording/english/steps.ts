import type { Edge } from "../../cut/edge.ts";
import type { Pass } from "../../cut/passes.ts";
import type { SetGuideName } from "../../guide/registry.ts";
import type { Step, StepCode } from "../../plan/steps.ts";
import type { Mounting } from "../../router/mounting.ts";
import type { Show } from "../show.ts";
import { describeBushing } from "./bushings.ts";
import { DIRECTIONS } from "./directions.ts";
import { describeFencePlace } from "./fences.ts";
import { describeHeight } from "./heights.ts";
import { describeWasteGroove } from "./waste.ts";

type Sentences = { readonly [Code in StepCode]: (step: Extract<Step, { code: Code }>, show: Show) => string };

const GRAIN: Readonly<Record<Edge["grain"], string>> = {
  end: "end grain",
  long: "long grain",
  across: "across the grain",
};

/** What of each guide is moved to set it. */
const GUIDE_PARTS: Readonly<Record<SetGuideName, string>> = {
  fence: "fence",
  "fence-flush-with-bearing": "fence",
  "fence-with-offset-outfeed": "fence",
  sled: "fence, with the sled against it,",
  "edge-guide": "edge guide",
};

const SENTENCES: Sentences = {
  "waste-groove": (groove, show) => `First take out most of the wood: ${describeWasteGroove(groove, show)}`,
  "mount-bit": () => "Unplug the router. Clean the collet, seat the bit, tighten, and turn it by hand.",
  "set-dial": ({ mark, rpm }, show) => `Set the dial to ${show.mark(mark)}: about ${show.rotation(rpm)}.`,
  "no-dial-to-set": ({ rpm }, show) => `This router runs at ${show.rotation(rpm)}; there is no dial to set.`,
  "set-slowest": ({ rpm }, show) =>
    `Turn the router's speed down as far as it goes: about ${show.rotation(rpm)}.`,
  "set-fastest": ({ rpm }, show) =>
    `Turn the router's speed up as far as it goes: about ${show.rotation(rpm)}.`,
  "set-height-over-work": ({ pass, depthMm }, show) =>
    pass === 1
      ? `With the motor off let the bit touch the highest place of the work. For pass 1 set it ${show.length(depthMm)} lower than that.`
      : `For pass ${pass} set the bit ${show.length(depthMm)} lower than where it touched the work.`,
  "set-height": ({ pass, ...height }, show) =>
    `${forPass(pass)}et the bit ${describeHeight(height, show)}${atWing(pass, height.mounting)}.`,
  "set-fence": ({ pass, run, fenceMm, standsOutMm, guide }, show) => {
    const place = describeFencePlace(fenceMm, show);
    const reach =
      standsOutMm === undefined ? "" : `, so that the bit reaches ${show.length(standsOutMm)} past it`;
    switch (guide) {
      case "fence":
      case "fence-with-offset-outfeed":
        return `${forPass(pass, run)}et the fence ${place}${reach}.`;
      case "sled":
        return `${forPass(pass, run)}et the fence, with the sled against it, so that the edge of the work runs ${place}.`;
      case "edge-guide":
        return `${forPass(pass, run)}et the edge guide ${place}.`;
      case "fence-flush-with-bearing":
        return `${forPass(pass, run)}et the fence flush with the bearing, ${place}.`;
    }
  },
  "set-fence-to-groove": ({ nearEdgeMm, guide }, show) =>
    `Set the ${GUIDE_PARTS[guide]} as far from the bit's centre as the middle of the groove lies from the edge of the work; to the near edge of the bit it is ${show.length(nearEdgeMm)} less.`,
  "set-fence-halves": ({ pass, infeedMm, outfeedMm }, show) =>
    `For pass ${pass} set the outfeed half of the fence level with the bit's edge, ${describeFencePlace(outfeedMm, show)}, and the infeed half ${show.length(outfeedMm - infeedMm)} behind it.`,
  "fix-template": ({ bearing, sawFirst, templateThicknessMm, standsOutMm }, show) => {
    const where =
      bearing === "shank"
        ? "between the work and the table or base"
        : "on the face of the work away from the table or base";
    const out =
      standsOutMm > 0 ? ` The bit stands out ${show.length(standsOutMm)} past them: leave it room.` : "";
    const saw = sawFirst ? "Saw the waste to within 2 to 3 mm of the line. " : "";
    return `${saw}Fix the template, ${show.length(templateThicknessMm)} thick, ${where}.${out}`;
  },
  "fix-bushing-template": describeBushing,
  "clamp-straightedge": ({ inRuns }) =>
    inRuns
      ? "Measure from the edge of the base to the far edge of the bit: that is how far the straightedge stands from the far wall of a run."
      : "Measure from the edge of the base to the near edge of the bit; clamp the straightedge that far from the line this edge must cut, and parallel to it.",
  "fix-pin": () => "Fix a starting pin or rest in the table beside the bit.",
  "clamp-on-sled": () =>
    "Clamp the work on a sled or coping jig, square to the fence, with a backer behind where the bit leaves it.",
  "lay-rails": () =>
    "Wedge the work so that it cannot rock, and set stiff, straight rails level on both sides of it for the router's carriage.",
  "move-over": ({ pass, run, overMm, mounting }, show) => {
    if (mounting === "table") {
      return overMm === 0
        ? `${forPass(pass, run)}et the fence as far from the near edge of the bit as the nearer wall of the groove lies from the edge of the work.`
        : `${forPass(pass, run)}et the fence ${show.length(overMm)} farther from you than for the first run: the bit widens the groove toward you.`;
    }
    return overMm === 0
      ? `${forPass(pass, run)}et the straightedge as far from the right-hand wall of the groove, seen along the travel, as the edge of the base lies from the far edge of the bit.`
      : `${forPass(pass, run)}et the straightedge ${show.length(overMm)} to the left of where it lay for the first run, seen along the travel.`;
  },
  "run-idle": () =>
    "Stand aside and run the bit out of the wood. If it shakes or rings, stop: do not cut with it.",
  "cut-edges": ({ pass, passKind, edges, grain, pieces, rows, direction, feedMPerMin }, show) =>
    `Pass ${pass}${lightness(pass, passKind)}: cut ${edgeList(edges)}${rows > 1 ? ` in ${rows} rows` : ""} ` +
    `(${GRAIN[grain]})${ofPieces(pieces)}, moving ${DIRECTIONS[direction]}, ${show.feed(feedMPerMin)}.`,
  "test-piece": ({ depthMm, widthMm, runs }, show) => {
    const sizes = [
      ...(depthMm === undefined ? [] : [`${show.length(depthMm)} deep`]),
      ...(widthMm === undefined ? [] : [`${show.length(widthMm)} wide`]),
    ];
    const cut = runs === 1 ? "this cut" : `this cut, ${runs === 2 ? "both" : `all ${runs}`} runs of it,`;
    return `Make ${cut} on a test piece of the same stock and measure the cut, not the bit: it must be ${sizes.join(" and ")}. Correct the setting before the work is cut.`;
  },
  "check-collet": () => "Unplug the router and check the collet: a heavy bit works loose.",
};

/**
 * A step of the work as a sentence.
 * @example
 * describeStep({ code: "set-height", heightMm: 6, cutterMm: 6, mounting: "table" }, showIn("metric")) // → "Set the bit 6 mm above the table, measured with a wing turned to where it stands highest."
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

/** Said at the first height alone: the others are measured in the same way. */
function atWing(pass: number | undefined, mounting: Mounting): string {
  if (pass !== undefined && pass > 1) return "";
  return `, measured with a wing turned to where it stands ${mounting === "table" ? "highest" : "lowest"}`;
}

/** A light pass that is the only one is no last one. */
function lightness(pass: number, kind: Pass["kind"]): string {
  if (kind === "rough") return "";
  if (kind === "back-rout") return ", the light back-rout";
  return pass > 1 ? ", the light last one" : ", a light one";
}

function ofPieces(pieces: number): string {
  if (pieces === 1) return "";
  return pieces === 2 ? " of both pieces" : ` of all ${pieces} pieces`;
}
