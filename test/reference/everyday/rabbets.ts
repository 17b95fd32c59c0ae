import { BOARD, bitOf, type EverydayPlan, LEFT_TO_RIGHT, LONG_EDGE, RIGHT_TO_LEFT } from "./everyday-plan.ts";

const RABBET_BIT = bitOf({ kind: "rabbet", diameterMm: 34.9, cuttingLengthMm: 12.7, pilotDiameterMm: 15.9 });
const STRAIGHT_19 = bitOf({ kind: "straight", diameterMm: 19.05, cuttingLengthMm: 31.75 });
const STRAIGHT_12 = bitOf({ kind: "straight", diameterMm: 12.7, cuttingLengthMm: 31.75 });

/** Rabbets: with a bearing, in a fence, along an edge guide. Common practice. */
export const RABBET_PLANS: readonly EverydayPlan[] = [
  {
    name: "Rabbet for a cabinet back with a rabbet bit, table",
    bit: RABBET_BIT,
    mounting: "table",
    cut: { kind: "rabbet", depthMm: 10, edges: LONG_EDGE, work: BOARD },
    expected: {
      verdict: "runs",
      guide: "fence-flush-with-bearing",
      edgesOutMm: 10,
      fenceMm: 7.95,
      passes: [2, 4],
    },
  },
  {
    name: "The same by hand",
    bit: RABBET_BIT,
    mounting: "handheld",
    cut: { kind: "rabbet", depthMm: 10, edges: LONG_EDGE, work: BOARD },
    expected: { verdict: "runs", guide: "bearing", edgesOutMm: 10, says: [LEFT_TO_RIGHT], passes: [2, 5] },
  },
  {
    name: "Rabbet 8 by 6 mm with a straight bit buried in the fence",
    bit: STRAIGHT_19,
    mounting: "table",
    cut: { kind: "rabbet", depthMm: 6, widthMm: 8, edges: LONG_EDGE, work: BOARD },
    expected: { verdict: "runs", guide: "fence", edgesOutMm: 6, fenceMm: 1.525, says: [RIGHT_TO_LEFT] },
  },
  {
    name: "Rabbet 10 mm wide with a 12.7 mm bit: its centre before the fence",
    bit: STRAIGHT_12,
    mounting: "table",
    cut: { kind: "rabbet", depthMm: 5, widthMm: 10, edges: LONG_EDGE, work: BOARD },
    expected: { verdict: "runs", guide: "fence", fenceMm: -3.65, says: [RIGHT_TO_LEFT] },
  },
  {
    name: "Rabbet 20 mm wide with a 12.7 mm bit, in several runs",
    bit: STRAIGHT_12,
    mounting: "table",
    cut: { kind: "rabbet", depthMm: 5, widthMm: 20, edges: LONG_EDGE, work: BOARD },
    expected: { verdict: "runs", guide: "fence" },
  },
  {
    name: "Rabbet with a straight bit and an edge guide, by hand",
    bit: STRAIGHT_19,
    mounting: "handheld",
    cut: { kind: "rabbet", depthMm: 5, widthMm: 8, edges: LONG_EDGE, work: BOARD },
    expected: { verdict: "runs", guide: "edge-guide", says: [LEFT_TO_RIGHT, /below the base/] },
  },
];
