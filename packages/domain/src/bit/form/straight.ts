import { defineForm } from "./define.ts";
import { parallelDimensions, parallelFaults, parallelOutline } from "./parallel.ts";
import { onlyStretch, soldLengthMm } from "./read-wall.ts";
import { lightGroove } from "./usual-cut.ts";

/** Diameters that are sold everywhere, mm: 1/4 to 1-1/2 in. Source: common practice. */
const DIAMETERS_MM = [6.35, 9.525, 12.7, 19.05, 25.4, 31.75, 38.1] as const;

export const straight = defineForm({
  kind: "straight",
  title: "Straight",
  meaning: "Parallel cutting edges: grooves, dadoes, rabbets and square edges.",
  alsoCalled: ["plunge", "dado", "trenching", "groove"],
  suits: ["groove", "rabbet", "edge", "surface", "inlay"],
  dimensions: parallelDimensions,
  faults: parallelFaults,
  outline: parallelOutline,
  pilotRadiusMm: () => undefined,
  usualCut: ({ diameterMm, cuttingLengthMm }) => lightGroove(diameterMm, cuttingLengthMm),
  searchedBy: () => ({}),
  formsFor: (wall) => {
    const level = onlyStretch(wall, "level");
    if (level === undefined) return [];
    const diameterMm = DIAMETERS_MM.find((each) => each / 2 >= level.endMm);
    if (diameterMm === undefined) return [];
    return [{ kind: "straight", diameterMm, cuttingLengthMm: soldLengthMm(level.lengthMm) }];
  },
  work: "lying",
  plunges: "some",
  wingFillRatio: 0.42,
});
