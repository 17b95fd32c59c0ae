import type { JointFinding, JointFindingCode, PairDimension } from "../../joint/finding.ts";
import type { HalfMeasures } from "../../joint/solve-joint.ts";
import type { Show } from "../show.ts";

type Sentences = {
  readonly [Code in JointFindingCode]: (finding: Extract<JointFinding, { code: Code }>, show: Show) => string;
};

const DIFFER: Readonly<Record<PairDimension, string>> = {
  thickness: "the thickness of groove and tongue",
  depth: "the depth of the groove and the length of the tongue",
  radius: "the radius",
  land: "the flat beside the groove",
  angle: "the angle",
};

/** Nobody sees less in wood, mm. Ours. */
const LEAST_SAID_MM = 0.05;

const SENTENCES: Sentences = {
  "goes-in-too-tight": ({ byMm, shimMm }, show) =>
    `What goes in is ${show.length(byMm)} too thick. ${
      shimMm === undefined
        ? "Correct it by the test piece before you cut the work."
        : `If the groove's cutters come apart, put ${show.length(shimMm)} of shims between them; otherwise run the groove a second time, ${show.length(shimMm)} farther from the face.`
    }`,
  "goes-in-too-loose": ({ byMm, shimMm }, show) =>
    `What goes in is ${show.length(byMm)} too thin. ${
      shimMm === undefined
        ? "Correct it by the test piece before you cut the work."
        : `If the cutters of the tongue come apart, put ${show.length(shimMm)} of shims between them; otherwise use bits that are a pair.`
    }`,
  "stays-open": ({ gapMm, fromFaceMm }, show) =>
    fromFaceMm === 0
      ? `Pushed together, the halves stay apart by ${show.length(gapMm)} at the face that lies on the table.`
      : `Pushed together, the halves stay apart by ${show.length(gapMm)}, measured at ${show.length(fromFaceMm)} from the face that lies on the table.`,
  "faces-not-flush": ({ facesOffMm }, show) =>
    `The faces are off by ${show.length(Math.abs(facesOffMm))}: the second part's face is ${facesOffMm > 0 ? "too high" : "too low"}. Correct the height by the test pieces.`,
  "ends-not-flush": ({ endsOffMm }, show) =>
    `The corner is off by ${show.length(Math.abs(endsOffMm))}: the standing part's outer face ${endsOffMm > 0 ? "stands out past" : "stops short of"} the end of the lying one. Correct the fence by the test pieces.`,
  "back-not-reached": ({ shortMm }, show) =>
    `The cope bit leaves the last ${show.length(shortMm)} at the rail's back uncut. Use thinner stock, or a cope bit with a longer cutter at its tip.`,
  "sharpened-apart": ({ gapMm, overlapMm, differ }, show) => {
    const leaves = [
      ...(gapMm > LEAST_SAID_MM ? [`a gap of ${show.length(gapMm)}`] : []),
      ...(overlapMm > LEAST_SAID_MM ? [`an overlap of ${show.length(overlapMm)}`] : []),
    ].join(" and ");
    const why =
      differ.length === 0 ? "" : ` They differ in ${differ.map((name) => DIFFER[name]).join(", and in ")}.`;
    return `These two bits no longer fit each other: ${leaves}.${why} Have both sharpened together, as a set.`;
  },
  "pair-matches": () => "These two bits fit each other.",
  "not-a-pair": () => "These two bits make no joint with each other.",
};

/**
 * A finding of a joint as a sentence or two.
 * @example
 * const finding = { code: "faces-not-flush", severity: "care", facesOffMm: -0.4 };
 * describeJointFinding(finding, showIn("metric")) // → "The faces are off by 0.4 mm: the second part's face is too low. Correct the height by the test pieces."
 */
export function describeJointFinding<Code extends JointFindingCode>(
  finding: Extract<JointFinding, { code: Code }>,
  show: Show,
): string {
  const { code }: { code: Code } = finding;
  return SENTENCES[code](finding, show);
}

/**
 * What to measure on the test piece of one half, one sentence each.
 * @example
 * const measures = { fromFaceMm: 6.3, reachMm: 9.5, thicknessMm: 6.4 };
 * describeHalfMeasures(measures, showIn("metric"))[0] // → "From the face that lay on the table to the step: 6.3 mm."
 */
export function describeHalfMeasures(
  { fromFaceMm, reachMm, thicknessMm }: HalfMeasures,
  show: Show,
): string[] {
  return [
    `From the face that lay on the table to the step: ${show.length(fromFaceMm)}.`,
    `From the edge in, at the deepest: ${show.length(reachMm)}.`,
    ...(thicknessMm === undefined
      ? []
      : [`The tongue's thickness, or the groove's width: ${show.length(thicknessMm)}.`]),
  ];
}
