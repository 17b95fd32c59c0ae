import type { GuideStep } from "../../guide/step.ts";
import type { Show } from "../show.ts";

type BushingTemplate = Extract<GuideStep, { code: "fix-bushing-template" }>;

/** Where the template lies, and how much larger or smaller it is than what is cut. */
const LINES: Readonly<Record<BushingTemplate["line"], (step: BushingTemplate, show: Show) => string>> = {
  groove: ({ offsetMm }, show) =>
    `Its edge lies ${show.length(offsetMm)} from the nearer wall of the groove.`,
  outside: ({ offsetMm }, show) =>
    `It is smaller than the finished piece by ${show.length(offsetMm)} all round. Lay a waste board under the work.`,
  inside: ({ offsetMm }, show) =>
    `Its opening is larger than the finished one by ${show.length(offsetMm)} all round. Lay a waste board under the work.`,
  recess: (step, show) =>
    `Its opening is larger than the recess by ${show.length(step.offsetMm)} all round. ${corners(step, show)} Cut around the edge first, then clear the middle with the base flat on the template. ${otherPart(step, show)}`,
  plug: (step, show) =>
    `Its opening is larger than the plug by ${show.length(step.offsetMm)} all round. ${corners(step, show)} Tape the plug's stock to a waste board, or it comes free and is thrown. ${otherPart(step, show)}`,
};

/** A bushing and its template as a step: what is fixed where, and how far the template stands from the line. */
export function describeBushing(step: BushingTemplate, show: Show): string {
  const { bushingDiameterMm, templateThicknessMm, line } = step;
  return (
    `Fit the base with the bushing of ${show.length(bushingDiameterMm)} and fix the template, ${show.length(templateThicknessMm)} thick, on the work. ` +
    `${LINES[line](step, show)} The bushing must be shorter than the template is thick.`
  );
}

function corners({ leastCornerRadiusMm = 0 }: BushingTemplate, show: Show): string {
  return `Its inside corners are rounded to at least ${show.length(leastCornerRadiusMm)}, or plug and recess do not fit there.`;
}

function otherPart({ line, otherBushingDiameterMm: otherMm }: BushingTemplate, show: Show): string {
  const [other, needs] =
    line === "recess" ? ["plug", "a larger bushing for both, or a smaller bit"] : ["recess", "a smaller bit"];
  return otherMm === undefined
    ? `The ${other} cannot be cut on the same template with this bit: take ${needs}.`
    : `The ${other} takes the same template and bit with a bushing of ${show.length(otherMm)}.`;
}
