import type { NotTaken } from "../../search/not-taken.ts";
import type { Presentation } from "../../search/wanted.ts";
import type { Show } from "../show.ts";

/**
 * Why a bit was not taken, as a sentence with its numbers.
 * @example
 * const presentation = { work: "flat", face: "front" };
 * const reason = { code: "too-short", lengthMm: 4, neededMm: 5.9 };
 * describeNotTaken({ bitId: "b", presentation, reason }, showIn("metric")) // → "Its edges are 4 mm long; this cut takes 5.9 mm."
 */
export function describeNotTaken({ reason }: NotTaken, show: Show): string {
  switch (reason.code) {
    case "too-short":
      return `Its edges are ${show.length(reason.lengthMm)} long; this cut takes ${show.length(reason.neededMm)}.`;
    case "out-of-reach":
      return `Without its shank it stands out ${show.length(reason.reachMm)}; this cut takes ${show.length(reason.neededMm)}.`;
    case "too-small":
      return `It reaches no deeper than its radius of ${show.length(reason.reachMm)}; this cut takes ${show.length(reason.neededMm)}.`;
    case "pilot-in-the-way":
      return `Past its bearing, ${show.length(2 * reason.radiusMm)} in diameter, it reaches ${show.length(reason.reachMm)} deep; this cut takes ${show.length(reason.neededMm)}. A smaller bearing may do.`;
    case "body-in-the-way":
      return `A part of it that does not cut, ${show.length(2 * reason.radiusMm)} in diameter, would rub on the work: it reaches ${show.length(reason.reachMm)} deep, and this cut takes ${show.length(reason.neededMm)}.`;
    case "gouges-everywhere":
      return "Wherever it would cut some of the waste, it would also cut into what must stay.";
    case "leaves-too-much": {
      const { heightMm, leftMm, leftAt } = reason;
      const place = `${show.length(leftAt.xMm)} from the edge and ${show.length(leftAt.zMm)} from the front face`;
      return `At a height of ${show.length(heightMm)}, the nearest that was tried, it leaves up to ${show.length(leftMm)} in front of the wall, ${place}.`;
    }
    case "dominated":
      return "Another bit takes away all that this one could.";
  }
}

/**
 * How the work lies, in words.
 * @example
 * describePresentation({ work: "standing", face: "back" }) // → "standing on its edge, with the back face to the fence"
 */
export function describePresentation({ work, face }: Presentation): string {
  return work === "flat"
    ? `flat, with the ${face} face down`
    : `standing on its edge, with the ${face} face to the fence`;
}
