import { type Profile, radiusOnSegmentMm, type Show } from "@rimwise/domain";
import { OPENING_MM, type Section } from "./layout.ts";

/** A length to set or to check, between two places of the world. */
export type Length = {
  readonly name: string;
  readonly valueMm: number;
  readonly text: string;
  readonly along: "x" | "z";
  /** Whether it is set, or checked on a test piece. */
  readonly isSet: boolean;
  readonly from: readonly [xMm: number, zMm: number];
  readonly to: readonly [xMm: number, zMm: number];
};

/** A length that is nought is said in the steps; two lengths this near are one, mm. */
const NOUGHT_MM = 1e-6;
/** How near a corner of the wall lies to the depth it is at, mm. */
const AT_DEPTH_MM = 0.05;

/** What is set for the last pass, and what its test piece must measure: all of it as the steps of the plan say it. */
export function lengthsOf(section: Section, show: Show): Length[] {
  const lengths = [...heightOf(section, show), ...fenceOf(section, show), ...testPieceOf(section, show)];
  return lengths.filter(({ valueMm }) => Math.abs(valueMm) > NOUGHT_MM);
}

/** A height is measured at the cutter, from the table or base; on rails from the work. */
function heightOf(section: Section, show: Show): Length[] {
  const { plan, standing, sections, planeMm, rimRadiusMm, outline } = section;
  const first = outline.find(({ role }) => role === "edge");
  const tipRadiusMm = first === undefined ? 0 : radiusOnSegmentMm(first, first.fromMm);
  const height = (valueMm: number, fromZMm: number): Length => ({
    name: "height",
    valueMm,
    text: show.length(valueMm),
    along: "z",
    isSet: true,
    from: [standing.axisMm - rimRadiusMm - OPENING_MM, fromZMm],
    to: [standing.axisMm - tipRadiusMm, standing.tipMm - sections.edgesFromMm],
  });
  const step = plan.steps.findLast(({ code }) => code === "set-height" || code === "set-height-over-work");
  switch (step?.code) {
    case "set-height":
      return [height(step.cutterMm, planeMm)];
    case "set-height-over-work":
      return [height(step.depthMm, 0)];
    default:
      return [];
  }
}

function fenceOf(section: Section, show: Show): Length[] {
  const { plan, standing, highMm } = section;
  const { axisMm, tipMm } = standing;
  const widest: readonly [number, number] = [axisMm, tipMm];
  const across = (name: string, valueMm: number, fromXMm: number, toXMm: number): Length => ({
    name,
    valueMm,
    text: `${WORDS[name] ?? name} ${show.length(Math.abs(valueMm))}`,
    along: "x",
    isSet: true,
    from: fromXMm === axisMm ? widest : [fromXMm, highMm],
    to: [toXMm, highMm],
  });
  const step = plan.steps.findLast(
    ({ code }) => code === "set-fence" || code === "set-fence-to-groove" || code === "set-fence-halves",
  );
  switch (step?.code) {
    case "set-fence": {
      const { fenceMm, standsOutMm } = step;
      const fence = across("fence", fenceMm, axisMm, axisMm + fenceMm);
      if (standsOutMm === undefined) return [fence];
      return [fence, across("stands-out", standsOutMm, axisMm + fenceMm, axisMm + fenceMm + standsOutMm)];
    }
    case "set-fence-to-groove":
      return [across("near-edge", step.nearEdgeMm, axisMm, axisMm - step.nearEdgeMm)];
    case "set-fence-halves":
      return [
        across("outfeed", step.outfeedMm, axisMm, axisMm + step.outfeedMm),
        across(
          "infeed-behind",
          step.outfeedMm - step.infeedMm,
          axisMm + step.infeedMm,
          axisMm + step.outfeedMm,
        ),
      ];
    default:
      return [];
  }
}

/** What stands before a length across. */
const WORDS: Readonly<Record<string, string>> = {
  fence: "centre to fence",
  "stands-out": "bit past fence",
  "near-edge": "centre to near edge",
  outfeed: "centre to outfeed half",
  "infeed-behind": "infeed half behind",
  "test-width": "cut",
};

function testPieceOf({ plan, profiles, sections, workMm, highMm }: Section, show: Show): Length[] {
  const piece = plan.testPiece;
  if (piece === undefined) return [];
  const { depthMm, widthMm } = piece;
  const [fromMm, toMm] = sections.sides === 1 ? [0, widthMm ?? 0] : [-(widthMm ?? 0) / 2, (widthMm ?? 0) / 2];
  return [
    ...(depthMm === undefined
      ? []
      : [
          {
            name: "test-depth",
            valueMm: depthMm,
            text: show.length(depthMm),
            along: "z" as const,
            isSet: false,
            from: [workMm[1], 0] as const,
            to: [wallAtMm(profiles.at(-1), depthMm), depthMm] as const,
          },
        ]),
    ...(widthMm === undefined
      ? []
      : [
          {
            name: "test-width",
            valueMm: widthMm,
            text: `${WORDS["test-width"]} ${show.length(widthMm)} wide`,
            along: "x" as const,
            isSet: false,
            from: [fromMm, highMm] as const,
            to: [toMm, highMm] as const,
          },
        ]),
  ];
}

/** Where the cut ends at a depth: the corner of the wall farthest into the work there. */
function wallAtMm(profile: Profile | undefined, depthMm: number): number {
  const corners = profile?.flatMap(({ boundary }) => boundary) ?? [];
  const inCut = corners.filter(({ zMm }) => Math.abs(zMm - depthMm) < AT_DEPTH_MM);
  return inCut.reduce((farthest, { xMm }) => Math.max(farthest, xMm), 0);
}
