import { isInside } from "../cut/course.ts";
import { defineGuide, type GuideContext, handheldDirection } from "./define.ts";
import type { GuideFinding } from "./finding.ts";
import type { BushingLine, GuideStep } from "./step.ts";
import { otherBushingMm, templateOffsetMm, turnsFree } from "./template-offset.ts";

/**
 * A bushing around the bit that runs along a template, by hand. The cut lies off the template's line by half of bushing less bit, on every
 * side; a plug, cut around its far wall, by half of both together. Source: geometry.
 */
export const templateAndBushing = defineGuide({
  name: "template-and-bushing",
  isSet: false,
  runsOnWork: false,
  serves: ({ setup, mounting, pilotRadiusMm }) =>
    setup.bushing !== undefined && mounting === "handheld" && pilotRadiusMm === undefined,
  direction: (context) => {
    switch (lineOf(context)) {
      case "groove":
        return "router-with-template-on-left";
      case "recess":
      case "plug":
        return "router-clockwise-inside";
      case "outside":
      case "inside":
        return handheldDirection(context);
    }
  },
  findings: ({ setup }) => bushingFindings(setup),
  steps: bushingSteps,
  says: () => ["template-fixed"],
});

/** What of the work follows the template. */
function lineOf({ cut }: GuideContext): BushingLine {
  if (cut.kind === "inlay") return cut.part;
  if (cut.kind === "groove") return "groove";
  return isInside(cut) ? "inside" : "outside";
}

function bushingSteps(context: GuideContext): GuideStep[] {
  const { bushing, greatestRadiusMm } = context.setup;
  if (bushing === undefined) return [];
  const { diameterMm: bushingDiameterMm, templateThicknessMm } = bushing;
  const bitDiameterMm = 2 * greatestRadiusMm;
  const line = lineOf(context);
  return [
    {
      code: "fix-bushing-template",
      bushingDiameterMm,
      templateThicknessMm,
      line,
      offsetMm: templateOffsetMm(line, bushingDiameterMm, bitDiameterMm),
      ...inlayPair(line, bushingDiameterMm, bitDiameterMm),
    },
  ];
}

/** Recess and plug fit if their bushings differ by two diameters of the bit, and if the larger one reaches into every corner. Source: geometry. */
function inlayPair(line: BushingLine, bushingDiameterMm: number, bitDiameterMm: number) {
  const otherMm = otherBushingMm(line, bushingDiameterMm, bitDiameterMm);
  if (otherMm === undefined) return {};
  return {
    leastCornerRadiusMm: Math.max(bushingDiameterMm, otherMm) / 2,
    ...(turnsFree(otherMm, bitDiameterMm) && { otherBushingDiameterMm: otherMm }),
  };
}

/** The bit turns inside the bushing and must not touch it. */
function bushingFindings({ bushing, greatestRadiusMm }: GuideContext["setup"]): GuideFinding[] {
  const bitDiameterMm = 2 * greatestRadiusMm;
  if (bushing === undefined || turnsFree(bushing.diameterMm, bitDiameterMm)) return [];
  const { diameterMm: bushingDiameterMm } = bushing;
  return [{ code: "bushing-too-small", severity: "refuse", bushingDiameterMm, bitDiameterMm }];
}
