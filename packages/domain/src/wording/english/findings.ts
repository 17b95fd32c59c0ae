import type { Finding, FindingCode } from "../../plan/findings.ts";
import type { Mounting } from "../../router/mounting.ts";
import type { Show } from "../show.ts";
import { describeOffers, guideTitle } from "./guides.ts";
import { limitTitle } from "./limits.ts";

type Sentences = {
  readonly [Code in FindingCode]: (finding: Extract<Finding, { code: Code }>, show: Show) => string;
};

/** The face of the work by the router. */
const NEAR_FACE: Readonly<Record<Mounting, string>> = {
  table: "the face that lies on the table",
  handheld: "the upper face, under the base",
};

/** The face that a cut through the work comes out of. */
const FAR_FACE: Readonly<Record<Mounting, string>> = {
  table: "the upper face, where the bit comes out",
  handheld: "the lower face, where the bit comes out",
};

/** How a bit that is wider below is led: along an edge, along a slot it came into from the end, or from a hole of its own. */
const FEED_ONLY: Readonly<Record<Extract<Finding, { code: "feed-only" }>["way"], string>> = {
  edge: "set its height once, feed all the way past it, and never lift or tilt in the cut.",
  slot: "in the cut it is neither lifted nor tilted, and the motor has stopped before it is drawn back.",
  "own-hole": "in the slot it is neither lifted nor tilted, and it comes out at its own hole alone.",
};

const SENTENCES: Sentences = {
  "table-only": () => "This bit is not for a handheld router. Mount the router in a table.",
  "router-too-fast": ({ slowestRpm, slowestRpmHighest, breaks, limitRpm }, show) =>
    `The slowest this router is known to run is ${show.rotation(slowestRpm)}, perhaps ${show.rotation(slowestRpmHighest)}. ` +
    `That is over ${list(breaks.map(limitTitle))}: at most ${show.rotation(limitRpm)}. Use a slower router for this bit.`,
  "no-collet-fits": ({ shankDiameterMm, colletDiametersMm }, show) =>
    colletDiametersMm.length === 0
      ? `No collet of this router is fit for use, so nothing holds a shank of ${show.length(shankDiameterMm)} safely. Replace the collet, and its nut if that is worn, before any bit goes in.`
      : `None of this router's collets (${colletDiametersMm.map(show.length).join(", ")}) is made for a shank of ${show.length(shankDiameterMm)}.`,
  "too-many-passes": ({ leaveMm }, show) =>
    `Even in many passes this cut is too heavy for the bit and the set-up. ${leaveForBit(leaveMm, show)}`,
  "handheld-with-care": () =>
    "This bit is at the limit of what a handheld router may hold. Clamp the work, take both hands and light passes; a table is better.",
  "carried-on-rails": () =>
    "In the hands alone this bit is for a table only. The carriage on its rails carries it: keep both hands on that, and never lift or tilt it while the bit turns.",
  "large-bit": ({ clearance }) =>
    clearance === "table-only"
      ? "This bit is for a table only. Large or heavy, it deserves care there too."
      : "This bit is nearly one for the table only. Large or heavy, it deserves care there too.",
  "too-heavy-at-once": ({ leaveMm }, show) =>
    `This cut can only be made at one setting, and in one run it is too heavy. ${leaveForBit(leaveMm, show)}`,
  "nothing-guides": ({ offers }) => `Nothing guides this cut. ${describeOffers(offers)}`,
  "guide-does-not-serve": ({ guide, offers }) =>
    guide === "freehand"
      ? `No cut is planned freehand: nothing holds the bit to its line. ${describeOffers(offers)}`
      : `This cut cannot be guided by ${guideTitle(guide)}. ${describeOffers(offers)}`,
  "template-too-thin": ({ templateThicknessMm, leastMm }, show) =>
    `A template of ${show.length(templateThicknessMm)} does not carry the whole bearing. Use one at least ${show.length(leastMm)} thick.`,
  "bushing-too-small": ({ bushingDiameterMm, bitDiameterMm }, show) =>
    `A bit of ${show.length(bitDiameterMm)} does not turn free in a bushing of ${show.length(bushingDiameterMm)}. Use a larger bushing or a smaller bit.`,
  "bearing-without-wood": ({ woodMm, leastMm }, show) =>
    `The bearing has ${show.length(woodMm)} of the edge to run on and needs at least ${show.length(leastMm)}. Take thicker stock, a smaller profile, or set the bit so that more of the edge is left.`,
  "climb-not-allowed": ({ reason }) =>
    reason === "table"
      ? "In a table the bit pulls work that is fed with the rotation out of your hands. Feed against it; a light pass with it is for a handheld router alone."
      : "The policy in force allows no cut with the rotation. Feed against it.",
  "light-climb-cut": ({ biteMaxMm }, show) =>
    `Fed with the rotation the bit pulls. Only a bite of up to ${show.length(biteMaxMm)}, firmly held, and only if the person in charge allows it.`,
  "thin-chip": ({ pass, chipMeanMm, chipMeanMinMm, speedForChipRpm }, show) =>
    `In pass ${pass} even the fastest hand leaves chips of ${show.fine(chipMeanMm)}; under ${show.fine(chipMeanMinMm)} the edge rubs and burns. ` +
    `Slow the bit to ${show.rotation(speedForChipRpm)}, take a deeper bite, or use a bit with fewer wings.`,
  "trials-contradict": ({ shookRpm }, show) =>
    `Speed trials disagree: the bit shook at ${show.rotation(shookRpm)} and ran free at or above it. The safe side is taken; inspect the bit and the collet, and try again.`,
  "shook-in-other-router": ({ shookRpm }, show) =>
    `In another router this bit shook at ${show.rotation(shookRpm)}. Spindles differ, so it is no limit here, but listen.`,
  "feed-only": ({ way }) => `This bit is wider below than above: ${FEED_ONLY[way]}`,
  "waste-first": ({ bit }) =>
    `This bit cannot be raised to its depth in several passes: most of the wood comes out first, with ${bit === undefined ? "a straight bit" : `${bit.name} of the rack`}.`,
  "burn-risk": ({ chipMeanMm, slowestEdgeMPerS }, show) =>
    `The thinnest chips are ${show.fine(chipMeanMm)} and the slowest part of the edge moves at ${show.speed(slowestEdgeMPerS)}: it may scorch. Sharp bit, steady feed, no stop.`,
  "tear-out-risk": ({ endGrainEdges }) =>
    `${endGrainEdges === 1 ? "The end-grain edge has" : "All edges are end grain, with"} no long-grain cut after it to take broken corners away.`,
  "came-loose-before": ({ times }) =>
    `This bit has come loose in the cut ${counted(times)}. Look for marks on the shank and wear in the collet, clean both, seat the shank short of the bottom, tighten, and check again after the first pass. A collet or shank that is worn is not used.`,
  "chattered-before": ({ times }) =>
    `This bit has chattered in this router ${counted(times)}. Look for dull or chipped edges, play in the spindle and a worn collet; take lighter passes, and stop if it starts again.`,
  "scorched-before": ({ times }) =>
    `This bit has scorched this wood ${counted(times)}. Clean the resin off the edges, see that they are sharp, keep the feed steady and leave a light last pass.`,
  "tore-out-before": ({ times }) =>
    `This bit has torn this wood ${counted(times)}. Back up the end of each cut, take lighter passes, and see that the edges are sharp.`,
  "frays-near-face": ({ mounting }) =>
    `An up-cut spiral frays ${NEAR_FACE[mounting]}. Let that be the face that is not seen, or knife or tape the line first. Its chips clear well.`,
  "frays-far-face": ({ mounting }) =>
    `A down-cut spiral frays ${FAR_FACE[mounting]}. Let that be the face that is not seen, or clamp a waste board against it.`,
  "chips-packed": () =>
    "A down-cut spiral presses the chips into the groove: stop often and clear them, or they heat the bit and lift it. Its edges stay clean.",
  "compression-unknown": ({ mounting }) =>
    `How long the up-cut tip of this bit is was not given. Each pass must go deeper than that, or it frays ${NEAR_FACE[mounting]}.`,
  "compression-shallow": ({ mounting, heightMm, upCutLengthMm }, show) =>
    `The first pass is ${show.length(heightMm)} deep, no deeper than the bit's up-cut tip of ${show.length(upCutLengthMm)}: it frays ${NEAR_FACE[mounting]}. Knife or tape the line first, or cut it deeper with a bit that bears it.`,
  melts: () => "This material melts before it burns. Keep the feed up and let chips clear.",
};

/**
 * A finding as a sentence.
 * @example
 * describeFinding({ code: "melts", severity: "note" }, showIn("metric")) // → "This material melts before it burns. Keep the feed up and let chips clear."
 */
export function describeFinding<Code extends FindingCode>(
  finding: Extract<Finding, { code: Code }>,
  show: Show,
): string {
  return SENTENCES[finding.code](finding, show);
}

function leaveForBit(leaveMm: number | undefined, show: Show): string {
  return leaveMm === undefined
    ? "Use a stronger bit, or take the wood out another way."
    : `Take out most of the wood another way first, and leave at most ${show.length(leaveMm)} for this bit.`;
}

function list(names: readonly string[]): string {
  const [last, ...others] = [...names].reverse();
  return others.length === 0 ? String(last ?? "") : `${others.reverse().join(", ")} and ${last}`;
}

function counted(times: number): string {
  return times === 1 ? "once" : times === 2 ? "twice" : `${times} times`;
}
