import type { Precaution, PrecautionCode } from "../../precaution/registry.ts";
import type { Show } from "../show.ts";

type Sentences = {
  readonly [Code in PrecautionCode]: (precaution: Extract<Precaution, { code: Code }>, show: Show) => string;
};

const SENTENCES: Sentences = {
  "read-markings": () =>
    "What is marked on the bit, the router's manual, local rules and the person in charge come before this plan.",
  "unplug-first": () => "Unplug the router before you change the bit or reach near it.",
  "seat-in-collet": ({ insertionMm, backOffMm }, show) =>
    `Put the shank in as far as it goes, draw it back ${show.length(backOffMm)}, and tighten; at least ${show.length(insertionMm)} must be held, or up to the mark on the shank.`,
  "check-collet-again": ({ massG }, show) =>
    `A bit of ${show.mass(massG)} shakes loose. Check the collet after the first pass and whenever the sound changes.`,
  "turn-by-hand": () =>
    "Turn the bit by hand once: it must clear the insert, the fence and the guard all round.",
  "start-slow": () => "Start on the slowest mark, clear of the wood, then turn up to the mark given.",
  "stop-if-it-shakes": () => "If it vibrates, stop. Go slower or do not use it; never hold on and hope.",
  "feed-against-rotation": ({ mounting, isInside }) => {
    if (mounting === "table" && isInside) {
      return "Go around the opening against the rotation: its far wall past the bit from left to right, its near wall from right to left. The other way the bit pulls the work out of your hands.";
    }
    if (mounting === "table") {
      return "Feed the work from right to left, against the rotation. The other way the bit pulls it out of your hands.";
    }
    return isInside
      ? "Move the router clockwise around the inside of the opening, against the rotation. The other way it runs off."
      : "Move the router from left to right along the edge, counter-clockwise around the outside of the work. The other way it runs off.";
  },
  "never-trap-the-work": () => "Never pass the work between the bit and the fence.",
  "guard-and-push-blocks": ({ handsAwayMm }, show) =>
    `Use the smallest insert that clears the bit, the guard and push blocks. Hands stay ${show.length(handsAwayMm)} away.`,
  "fence-and-pilot": () => "Set the fence flush with the pilot bearing.",
  "starting-pin": () =>
    "Leave the fence off. Start with the work against a starting pin, then swing it onto the bearing.",
  "fence-side": ({ mounting }) =>
    mounting === "table"
      ? "Keep the fence behind the bit: fed from right to left, the bit pushes the work against it."
      : "Keep the straightedge on the left of the router's way: there the bit pulls the router against it.",
  "stopped-groove": ({ mounting, way }) => {
    if (way === "own-hole") {
      return "Enter at the hole, feed along the slot, come back to the hole, and stop the motor there before the bit comes out. It leaves the slot nowhere else.";
    }
    if (way === "back-out") {
      return "Enter from the end of the work. Where the slot ends stop the motor, wait until the bit stands, and draw it back out along the slot; never lift it.";
    }
    return mounting === "table"
      ? "Mark where the groove starts and ends on work and fence; set stops, lower the work onto the bit against the rear stop, and stop the router before you lift it."
      : "Mark where the groove starts and ends; plunge at the start, raise the bit at the end before you lift the router. A bit that does not cut at its end enters from a drilled hole.";
  },
  "both-hands": () => "Clamp the work. Hold the router with both hands until the bit has stopped.",
  "small-work": ({ shortestMm, leastMm }, show) =>
    `An edge of ${show.length(shortestMm)} is too short to feed by hand alone: under ${show.length(leastMm)} use a sled or an approved jig, or cut it from a longer piece.`,
  "back-the-end-grain": () =>
    "Back the end grain with a square block where the bit leaves it, or it breaks out.",
  "keep-moving": () => "Keep moving. Where the bit rests it burns, first near its axis, where it is slowest.",
  "scrap-first": () => "Make the first cut of each set-up in scrap of the same thickness.",
  "eyes-ears-lungs": () =>
    "Wear eye and ear protection, draw off the dust, tie back hair, sleeves and cords.",
};

/**
 * A precaution as a sentence.
 * @example
 * describePrecaution({ code: "fence-and-pilot" }, showIn("metric")) // → "Set the fence flush with the pilot bearing."
 */
export function describePrecaution<Code extends PrecautionCode>(
  precaution: Extract<Precaution, { code: Code }>,
  show: Show,
): string {
  return SENTENCES[precaution.code](precaution, show);
}

/** Said on every plan and card. */
export const ADVICE =
  "This is advice from a calculation, not a certificate. The tool's own markings, the router's manual, local codes and the person in charge come first.";
