import type { Fault } from "../quantity/fault.ts";
import { rangeFaults } from "../quantity/range.ts";
import { CUT_RANGES, type Cut } from "./cut.ts";

/** Fields of a cut outside their range. Pointers start at the cut. */
export function cutFaults(cut: Cut): Fault[] {
  if (cut.edges.length === 0) return [{ pointer: "/edges", code: "no-edges", values: {} }];
  return [
    ...cut.edges.flatMap(({ lengthMm }, index) =>
      rangeFaults(`/edges/${index}/lengthMm`, lengthMm, CUT_RANGES.lengthMm),
    ),
    ...ownFaults(cut),
  ];
}

function ownFaults(cut: Cut): Fault[] {
  switch (cut.kind) {
    case "edge":
    case "panel":
    case "joint":
      return [
        ...rangeFaults("/thicknessMm", cut.thicknessMm, CUT_RANGES.thicknessMm),
        ...rangeFaults("/heightMm", cut.heightMm, CUT_RANGES.heightMm),
        ...rangeFaults("/fenceMm", cut.fenceMm, CUT_RANGES.fenceMm),
      ];
    case "rabbet":
      return [
        ...rangeFaults("/depthMm", cut.depthMm, CUT_RANGES.depthMm),
        ...rangeFaults("/widthMm", cut.widthMm, CUT_RANGES.widthMm),
      ];
    case "groove":
      return rangeFaults("/depthMm", cut.depthMm, CUT_RANGES.depthMm);
    case "trim":
      return [
        ...rangeFaults("/overhangMm", cut.overhangMm, CUT_RANGES.overhangMm),
        ...rangeFaults("/thicknessMm", cut.thicknessMm, CUT_RANGES.thicknessMm),
      ];
    case "surface":
      return [
        ...rangeFaults("/depthMm", cut.depthMm, CUT_RANGES.depthMm),
        ...rangeFaults("/widthMm", cut.widthMm, CUT_RANGES.surfaceWidthMm),
        ...rangeFaults("/stepOverRatio", cut.stepOverRatio, CUT_RANGES.stepOverRatio),
      ];
  }
}
