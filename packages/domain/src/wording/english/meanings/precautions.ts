import type { PrecautionCode } from "../../../precaution/registry.ts";

/** Of plans that older versions made. */
type FormerPrecautionCode = "fence-side";

/** What each precaution asks for. */
export const PRECAUTION_MEANINGS: Readonly<Record<PrecautionCode | FormerPrecautionCode, string>> = {
  "read-markings":
    "What is marked on the bit, the router's manual, local rules and the person in charge come first.",
  "unplug-first": "Unplug the router before the bit is changed.",
  "edges-whole": "Look at the cutting edges: one that is chipped, cracked or dull is not used.",
  "bearing-turns": "The bearing must run freely, and its screw must be tight.",
  "seat-in-collet": "Seat the shank deep enough in the collet.",
  "check-collet-again": "A heavy bit shakes loose: check the collet again.",
  "lock-the-height": "Lock the height or depth once it is set.",
  "turn-by-hand": "Turn the bit by hand once: it must clear everything around it.",
  "start-slow": "Start on the slowest mark, clear of the wood.",
  "stop-if-it-shakes": "Stop if it vibrates.",
  "feed-against-rotation": "Feed against the rotation; the text says which way that is.",
  "never-trap-the-work": "Never pass the work between the bit and the fence.",
  "guard-and-push-blocks": "Use the guard and push blocks, and keep the hands away from the bit.",
  "close-the-fence": "Close the fence up around the bit.",
  "fence-and-pilot": "The bearing must not stand back behind the fence.",
  "whole-edge-supported": "Once past the bit the work is pressed against the outfeed half of the fence.",
  "tall-fence": "Run the work upright against a tall fence.",
  "feather-boards": "Hold the work with feather boards before and after the bit.",
  "work-clamped-on-sled": "Push the sled with both hands, and never steady the work itself.",
  "starting-pin": "Start the work against a pin, without the fence.",
  "fence-behind-bit": "Keep the fence behind the bit.",
  "straightedge-on-left": "Keep the straightedge on the left of the router's way.",
  "guided-edge-on-right": "Keep the guided edge on the right of the router's way.",
  "support-both-ends": "Keep the edge guide against the edge where the cut starts and where it ends.",
  "template-fixed": "Fix the template so that it cannot creep, clear of the bit's way.",
  "bearing-on-template": "The whole height of the bearing must run on the template.",
  "work-cannot-rock": "Take the surface down evenly, row by row, and never stand in line with the row.",
  "stopped-groove": "How a groove that stops in the work is entered and left.",
  "both-hands": "Clamp the work and hold the router with both hands until the bit has stopped.",
  "support-the-base": "Keep the base from tipping over the edge.",
  "small-work": "The work is too small to be fed or clamped by itself.",
  "narrow-stock": "The work is so narrow that it brings the hands too near.",
  "same-face-down": "Keep the same face of every piece down.",
  "back-the-end-grain": "Back the edge where the bit leaves it across the grain.",
  "keep-moving": "Keep moving: the bit burns wood where it rests.",
  "scrap-first": "Make the first cut of each set-up in scrap.",
  "eyes-ears-lungs": "Wear eye and ear protection, draw off the dust, tie back what may be caught.",
  dust: "What the dust of this wood may do, and what to do about it.",
  "fence-side": "On which side of the bit the fence stands. Only in plans of older versions.",
};
