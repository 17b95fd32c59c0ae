import type { AssumedDimension } from "../../plan/assumed-dimensions.ts";
import type { Assumption, AssumptionCode } from "../../plan/assumptions.ts";
import type { UnusedReading } from "../../router/router.ts";
import type { Show } from "../show.ts";
import { describeFencePlace } from "./fences.ts";
import { describeGuide } from "./guides.ts";

type Sentences = {
  readonly [Code in AssumptionCode]: (assumption: Extract<Assumption, { code: Code }>, show: Show) => string;
};

const LEFT_OUT: Readonly<Record<UnusedReading["reason"], string>> = {
  contradicted: "a later reading contradicts it.",
  lapsed: "it is too old to be relied on. Read the mark again.",
  "off-dial": "the dial has no such mark.",
};

const DIMENSIONS: Readonly<Record<AssumedDimension["dimension"], (size: string) => string>> = {
  "shoulder-height": (size) => `The square step at the rim is taken as ${size} high.`,
  "back-cutter-height": (size) => `The back-cutter is taken as ${size} high.`,
  "back-cutter-length": (size) => `The cutter at the tip is taken as ${size} long.`,
  "arbor-diameter": (size) => `The arbor is taken as ${size} thick.`,
};

const SENTENCES: Sentences = {
  "mass-estimated": ({ massG, massHighG }, show) =>
    `The bit was not weighed. Its outline gives about ${show.mass(massG)}; it is judged as if it weighed ${show.mass(massHighG)}.`,
  "no-marked-maximum": () =>
    "No maximum speed is recorded for this bit. Look at its shank: if one is marked there, it comes before this plan.",
  "pilot-height-assumed": ({ pilotHeightMm }, show) =>
    `The pilot bearing is taken as ${show.length(pilotHeightMm)} high. Set the height by the cutter, not by the bearing.`,
  "dimension-assumed": ({ dimension, mm }, show) =>
    `${DIMENSIONS[dimension](show.length(mm))} Measure it: it decides where the bit cuts.`,
  "motor-power-assumed": ({ powerW }) =>
    `The router's power is not recorded; the passes are planned for ${powerW} W at its plate. A stronger one may need fewer.`,
  "run-out-assumed": ({ runOutMm }, show) =>
    `The bit's run-out was not measured in this collet; it is taken as ${show.length(runOutMm)}.`,
  "stick-out-assumed": ({ stickOutMm }, show) =>
    `The shank between collet and cutter was not measured; it is taken as ${show.length(stickOutMm)}. Seat it no farther out.`,
  "collets-unknown": ({ shankDiameterMm }, show) =>
    `The router's collets are not recorded. It must have one made for a ${show.length(shankDiameterMm)} shank.`,
  "template-assumed": ({ thicknessMm }, show) =>
    `The template is taken as ${show.length(thicknessMm)} thick. The height holds for that one alone.`,
  "overhang-assumed": ({ overhangMm }, show) =>
    `The work is taken to stand out ${show.length(overhangMm)} past the line of the cut. Saw the waste to within that.`,
  "guide-assumed": ({ guide }) => `No guide was named. This one is taken: ${describeGuide(guide)}`,
  "end-cutting-unknown": () =>
    "Whether the bit cuts at its end is not recorded, so it is not plunged. Look at its end; if an edge reaches the middle, record it.",
  "work-not-described": () =>
    "The piece is not described: it is taken to be no longer than what is cut of it. Narrow, small or many pieces ask for more; describe them.",
  "thickness-assumed": ({ thicknessMm }, show) => `The work is taken as ${show.length(thicknessMm)} thick.`,
  "height-assumed": ({ cutterMm }, show) =>
    `No height was given: at the end ${show.length(cutterMm)} of the cutter stands out.`,
  "fence-assumed": ({ fenceMm }, show) =>
    `The fence, or the pilot's contact, is taken to stand ${describeFencePlace(fenceMm, show)}.`,
  "dial-not-measured": ({ toleranceRatio }, show) =>
    `The dial was not measured here: speeds are drawn from the router's range and may be ${show.percent(toleranceRatio)} higher.`,
  "dial-between-readings": ({ toleranceRatio }, show) =>
    `The mark lies between two tachometer readings; the true speed may be ${show.percent(toleranceRatio)} higher.`,
  "dial-unknown": ({ toleranceRatio }, show) =>
    `The router's speed dial is not described, so only its slowest and its fastest speed are relied on, and up to ${show.percent(toleranceRatio)} more. Whatever lies between is taken to be faster than the slowest.`,
  "single-speed": ({ toleranceRatio }, show) =>
    `The router has one speed; it may actually be ${show.percent(toleranceRatio)} higher than its plate says.`,
  "reading-doubted": ({ mark, rpm, countsRpm }, show) =>
    `The reading of ${show.rotation(rpm)} at mark ${show.mark(mark)} is far from what the router's range and other readings give. Until a second reading agrees, the faster counts: ${show.rotation(countsRpm)}.`,
  "reading-left-out": ({ mark, rpm, reason }, show) =>
    `The reading of ${show.rotation(rpm)} at mark ${show.mark(mark)} is not used: ${LEFT_OUT[reason]}`,
  "no-load-speed": () =>
    "Speeds are those without load. In the cut a router slows down, which is the safe side.",
};

/**
 * An assumption as a sentence.
 * @example
 * describeAssumption({ code: "thickness-assumed", thicknessMm: 19 }, showIn("metric")) // → "The work is taken as 19 mm thick."
 */
export function describeAssumption<Code extends AssumptionCode>(
  assumption: Extract<Assumption, { code: Code }>,
  show: Show,
): string {
  return SENTENCES[assumption.code](assumption, show);
}
