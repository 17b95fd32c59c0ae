import type { Precaution, PrecautionCode } from "../../precaution/registry.ts";
import type { Dust } from "../../wood/dust.ts";
import type { Show } from "../show.ts";
import { DIRECTIONS } from "./directions.ts";

type Sentences = {
  readonly [Code in PrecautionCode]: (precaution: Extract<Precaution, { code: Code }>, show: Show) => string;
};

const DUST: Readonly<Record<Dust, (wood: string) => string>> = {
  irritant: (wood) =>
    `${wood}: its dust can irritate or sensitise, and hardwood dust is a recognised carcinogen. Extract it at the bit and wear a mask that fits.`,
  "irritant-softwood": (wood) =>
    `${wood}: its dust can irritate or sensitise. Extract it at the bit and wear a mask that fits.`,
  hardwood: () =>
    "Hardwood dust is a recognised carcinogen: extract it at the bit and wear a mask that fits.",
  board: (wood) =>
    `${wood}: its dust is fine and holds its glue. Extract it at the bit and wear a mask that fits.`,
};

const SLOWER = { mark: "go one mark slower", speed: "go slower", nothing: "clean the bit" } as const;

const SENTENCES: Sentences = {
  "read-markings": () =>
    "What is marked on the bit, the router's manual, local rules and the person in charge come before this plan.",
  "unplug-first": () => "Unplug the router before you change the bit or reach near it.",
  "seat-in-collet": ({ insertionMm, backOffMm }, show) =>
    `Put the shank in as far as it goes, draw it back ${show.about(backOffMm)}, and tighten; at least ${show.about(insertionMm)} must be held, or up to the mark on the shank.`,
  "check-collet-again": ({ massG }, show) =>
    `A bit of ${show.mass(massG)} shakes loose. Check the collet after the first pass and whenever the sound changes.`,
  "turn-by-hand": () =>
    "Turn the bit by hand once: it must clear the insert, the fence and the guard all round.",
  "start-slow": () => "Start on the slowest mark, clear of the wood, then turn up to the mark given.",
  "stop-if-it-shakes": () => "If it vibrates, stop. Go slower or do not use it; never hold on and hope.",
  "feed-against-rotation": ({ mounting, direction }) =>
    `Against the rotation means moving ${DIRECTIONS[direction]}. ${
      mounting === "table"
        ? "The other way the bit pulls the work out of your hands."
        : "The other way it runs off."
    }`,
  "never-trap-the-work": () => "Never pass the work between the bit and the fence.",
  "guard-and-push-blocks": ({ handsAwayMm }, show) =>
    `Use the smallest insert that clears the bit, the guard and push blocks. Hands stay ${show.about(handsAwayMm)} away.`,
  "fence-and-pilot": () =>
    "Hold a straightedge across the fence and the bearing: the bearing must not stand back behind the fence.",
  "starting-pin": () =>
    "Leave the fence off. Start with the work against a starting pin, then swing it onto the bearing.",
  "close-the-fence": () => "Close the fence up around the bit, or the work dips into its opening.",
  "whole-edge-supported": () =>
    "Once the work has passed the bit press it against the outfeed half of the fence: the infeed half holds it no more.",
  "tall-fence": () => "Run the work upright, flat against a tall fence, and never tip it.",
  "feather-boards": () =>
    "Hold the work down and to the fence with feather boards, before and after the bit, not beside it.",
  "work-clamped-on-sled": () =>
    "Push the sled with both hands, and never steady the work itself. Draw it back clear of the bit.",
  "fence-behind-bit": () =>
    "Keep the fence behind the bit: fed from right to left, the bit pushes the work against it.",
  "straightedge-on-left": () =>
    "Keep the straightedge on the left of the router's way: there the bit pulls the router against it.",
  "guided-edge-on-right": () =>
    "Keep the edge that the edge guide rides on the right of the router's way: there the bit pulls the guide against it.",
  "support-both-ends": () =>
    "Keep the edge guide's shoe against the edge over its whole length where you start and where you end.",
  "template-fixed": () =>
    "Fix the template so that it cannot creep, clear of the bit's way. It reaches past every open end of the cut.",
  "bearing-on-template": () =>
    "The whole height of the bearing must run on the template, and dust and glue must be off the edge it runs on.",
  "work-cannot-rock": () => "Take the surface down evenly, row by row, and never stand in line with the row.",
  "stopped-groove": ({ mounting, way }) => {
    if (way === "own-hole") {
      return "Enter at the hole, feed along the slot, come back to the hole, and stop the motor there before the bit comes out. It leaves the slot nowhere else.";
    }
    if (way === "back-out") {
      return "Enter from the end of the work. Where the slot ends stop the motor, wait until the bit stands, and draw it back out along the slot; never lift it.";
    }
    if (way === "plunge-in-opening") {
      return "Stand the router flat on the template with the bushing against its edge, plunge there, and raise the bit before you lift the router.";
    }
    if (way === "hole-in-opening") {
      return "Never plunge this bit: drill a hole as wide as the bit in the wood that is cut away, start there, and raise the bit before you lift the router.";
    }
    if (mounting === "table") {
      const start =
        way === "plunge"
          ? "lower the work onto the bit"
          : "drill a hole as wide as the bit where the groove starts, lower the work with the hole over the bit";
      return `Mark where the groove starts and ends on work and fence; set stops, ${start} against the rear stop, and stop the router before you lift it.`;
    }
    return way === "plunge"
      ? "Mark where the groove starts and ends; plunge at the start, raise the bit at the end before you lift the router."
      : "Mark where the groove starts and ends. Never plunge this bit: enter from a drilled hole as wide as the bit, or ramp in from an edge, and raise the bit at the end before you lift the router.";
  },
  "both-hands": () => "Clamp the work. Hold the router with both hands until the bit has stopped.",
  "small-work": ({ mounting, shortestMm, leastMm }, show) =>
    mounting === "table"
      ? `Work that runs ${show.length(shortestMm)} along the fence is too short to feed by hand alone: under ${show.about(leastMm)} use a sled or an approved jig, or cut it from a longer piece.`
      : `Work of ${show.length(shortestMm)} is too small to clamp and to stand a router on: under ${show.about(leastMm)} use an approved jig, or cut it from a longer piece.`,
  "narrow-stock": ({ widthMm, narrowMm }, show) =>
    `Work ${show.length(widthMm)} wide brings the hands too near: under ${show.length(narrowMm)} cut it on a wide board and rip it off after.`,
  "same-face-down": ({ face }) =>
    face === undefined
      ? "Mark one face of every piece and keep that face down throughout."
      : `Keep the ${face === "best" ? "best" : "other"} face of every piece down throughout.`,
  "edges-whole": () => "Look at the cutting edges: a bit with a chipped, cracked or dull edge is not used.",
  "bearing-turns": () => "Turn the bearing: it must run freely, and its screw must be tight.",
  "lock-the-height": ({ mounting }) =>
    mounting === "table"
      ? "Come to the height from below, then lock the lift."
      : "Lock the depth, and see that it stays.",
  "support-the-base": () =>
    "Much of the base hangs over the edge: keep your weight over the work, and lay stock of the same thickness beside narrow work.",
  dust: ({ dust, wood }) => DUST[dust](wood),
  "back-the-end-grain": ({ grain, isCurved }) => {
    if (isCurved) {
      return "Where the edge turns across the grain it breaks out easily: go lightly there, and back it where the bit leaves the wood.";
    }
    return grain === "end"
      ? "Back the end grain with a square block where the bit leaves it, or it breaks out."
      : "Knife or tape the line where the bit leaves the work across the grain, and back it with a block, or it breaks out.";
  },
  "keep-moving": ({ burns, slowedBy }) =>
    burns
      ? `Keep moving as long as the bit turns: this wood burns wherever it rests, first near its axis. Use a sharp bit; if it scorches, ${SLOWER[slowedBy]} and leave a lighter last pass.`
      : "Keep moving. Where the bit rests it burns, first near its axis, where it is slowest.",
  "scrap-first": () => "Make the first cut of each set-up in scrap of the same thickness.",
  "eyes-ears-lungs": () =>
    "Wear eye and ear protection, draw off the dust, tie back hair, sleeves and cords.",
};

/**
 * A precaution as a sentence.
 * @example
 * describePrecaution({ code: "unplug-first" }, showIn("metric")) // → "Unplug the router before you change the bit or reach near it."
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
