import { defineGuide, type GuideContext } from "./define.ts";
import type { GuideFinding } from "./finding.ts";

/**
 * A bushing around the bit that runs along a template, by hand. The cut lies off the template's line by half of bushing less bit, on every
 * side. Source: geometry.
 */
export const templateAndBushing = defineGuide({
  name: "template-and-bushing",
  isSet: false,
  runsOnWork: false,
  serves: ({ setup, mounting }) => setup.bushing !== undefined && mounting === "handheld",
  direction: () => "router-with-template-on-left",
  findings: ({ setup }) => bushingFindings(setup),
  steps: ({ setup: { bushing, greatestRadiusMm } }) => {
    if (bushing === undefined) return [];
    const { diameterMm: bushingDiameterMm, templateThicknessMm } = bushing;
    const offsetMm = bushingDiameterMm / 2 - greatestRadiusMm;
    return [{ code: "fix-bushing-template", bushingDiameterMm, templateThicknessMm, offsetMm }];
  },
  says: () => ["template-fixed"],
});

/** The bit turns inside the bushing and must not touch it. */
function bushingFindings({ bushing, greatestRadiusMm }: GuideContext["setup"]): GuideFinding[] {
  const bitDiameterMm = 2 * greatestRadiusMm;
  if (bushing === undefined || bushing.diameterMm > bitDiameterMm + LEAST_ROOM_MM) return [];
  const { diameterMm: bushingDiameterMm } = bushing;
  return [{ code: "bushing-too-small", severity: "refuse", bushingDiameterMm, bitDiameterMm }];
}

/** A bushing's wall and the gap to the bit, on both sides together, mm: about 1 mm each. From memory. */
const LEAST_ROOM_MM = 2;
