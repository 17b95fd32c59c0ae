import { BOARD, bitOf, type EverydayPlan, LONG_EDGE, RIGHT_TO_LEFT } from "./everyday-plan.ts";

const STRAIGHT_19 = bitOf({ kind: "straight", diameterMm: 19.05, cuttingLengthMm: 31.75 });
const STRAIGHT_12 = bitOf({ kind: "straight", diameterMm: 12.7, cuttingLengthMm: 31.75 });
const UP_CUT = bitOf(
  { kind: "spiral-up-cut", diameterMm: 9.53, cuttingLengthMm: 31.75 },
  { isEndCutting: true },
);
const SHELF_SIDE = { lengthMm: 900, widthMm: 300, thicknessMm: 19 } as const;
const ACROSS_SIDE = [{ lengthMm: 300, grain: "across" }] as const;
const TRAPPED = /between the bit and the fence/;

/** Grooves, dados, mortises, undercut slots and slots in an edge. Common practice. */
export const GROOVE_PLANS: readonly EverydayPlan[] = [
  {
    name: "Groove for a drawer bottom, 6.35 mm, table",
    bit: bitOf({ kind: "straight", diameterMm: 6.35, cuttingLengthMm: 19 }, { shankDiameterMm: 6.35 }),
    mounting: "table",
    cut: {
      kind: "groove",
      depthMm: 6,
      edges: LONG_EDGE,
      work: { lengthMm: 600, widthMm: 120, thicknessMm: 12 },
    },
    expected: {
      verdict: "runs",
      guide: "fence",
      edgesOutMm: 6,
      passes: [2, 3],
      says: [RIGHT_TO_LEFT, /middle of the groove lies from the edge/],
      neverSays: [TRAPPED],
    },
  },
  {
    name: "Dado for a shelf, 19 mm, by hand along a straightedge",
    bit: STRAIGHT_19,
    mounting: "handheld",
    cut: { kind: "groove", depthMm: 6, edges: ACROSS_SIDE, work: SHELF_SIDE },
    expected: {
      verdict: "runs",
      guide: "straightedge",
      edgesOutMm: 6,
      says: [/straightedge/, /left/],
      neverSays: [/end grain/, /above the table/],
    },
  },
  {
    name: "Groove 19 mm deep, 12.7 mm wide, table",
    bit: STRAIGHT_12,
    mounting: "table",
    cut: {
      kind: "groove",
      depthMm: 19,
      edges: LONG_EDGE,
      work: { lengthMm: 600, widthMm: 90, thicknessMm: 45 },
    },
    expected: { verdict: "runs", guide: "fence", edgesOutMm: 19, passes: [3, 8], neverSays: [TRAPPED] },
  },
  {
    name: "Groove 25 mm wide with a 19 mm bit, table",
    bit: STRAIGHT_19,
    mounting: "table",
    cut: { kind: "groove", depthMm: 6, widthMm: 25, edges: LONG_EDGE, work: BOARD },
    expected: { verdict: "runs", guide: "fence" },
  },
  {
    name: "Stopped groove, table",
    bit: { ...STRAIGHT_12, isEndCutting: true },
    mounting: "table",
    cut: { kind: "groove", depthMm: 6, isStopped: true, edges: LONG_EDGE, work: BOARD },
    expected: { verdict: "runs", guide: "fence", says: [/[Ll]ower/, /stop/] },
  },
  {
    name: "Stopped groove with a bit that may not cut at its end, by hand",
    bit: STRAIGHT_12,
    mounting: "handheld",
    cut: { kind: "groove", depthMm: 6, isStopped: true, edges: LONG_EDGE, work: BOARD },
    expected: {
      verdict: "runs",
      guide: "straightedge",
      says: [/drilled hole|ramp/],
      neverSays: [/[Pp]lunge (it|the bit|in)/],
    },
  },
  {
    name: "Stopped groove with an up-cut spiral, by hand",
    bit: UP_CUT,
    mounting: "handheld",
    cut: { kind: "groove", depthMm: 6, isStopped: true, edges: LONG_EDGE, work: BOARD },
    expected: { verdict: "runs", guide: "straightedge", says: [/[Pp]lunge/] },
  },
  {
    name: "Mortise 25 mm deep by template and bushing",
    bit: UP_CUT,
    mounting: "handheld",
    cut: {
      kind: "groove",
      depthMm: 25,
      isStopped: true,
      bushingDiameterMm: 16,
      templateThicknessMm: 6,
      guide: "template-and-bushing",
      edges: [{ lengthMm: 60, grain: "long" }],
      work: { lengthMm: 700, widthMm: 60, thicknessMm: 45 },
    },
    expected: { verdict: "runs", guide: "template-and-bushing", passes: [3, 10], says: [/bushing/, /3\.2/] },
  },
  {
    name: "Dovetail housing, by hand",
    bit: bitOf({ kind: "dovetail", diameterMm: 12.7, angleDeg: 14, cuttingLengthMm: 9 }),
    mounting: "handheld",
    cut: { kind: "groove", depthMm: 9, edges: ACROSS_SIDE, work: SHELF_SIDE },
    expected: {
      verdict: "runs",
      guide: "straightedge",
      edgesOutMm: 9,
      passes: [1, 1],
      says: [/[Ff]irst take out most/, /9 mm below the base/],
      neverSays: [/light last/, /[Ll]ift the bit/],
    },
  },
  {
    name: "Stopped dovetail slot, table",
    bit: bitOf({ kind: "dovetail", diameterMm: 12.7, angleDeg: 14, cuttingLengthMm: 9 }),
    mounting: "table",
    cut: { kind: "groove", depthMm: 9, isStopped: true, edges: LONG_EDGE, work: BOARD },
    expected: {
      verdict: "runs",
      passes: [1, 1],
      says: [/back/, /motor|[Ss]witch off|stopped/],
      neverSays: [/[Ll]ower the work/],
    },
  },
  {
    name: "Keyhole for hanging, by hand",
    bit: bitOf(
      { kind: "keyhole", diameterMm: 9.5, headHeightMm: 4, neckDiameterMm: 4.8, cuttingLengthMm: 11 },
      { shankDiameterMm: 6.35 },
    ),
    mounting: "handheld",
    cut: {
      kind: "groove",
      depthMm: 11,
      isStopped: true,
      edges: [{ lengthMm: 30, grain: "across" }],
      work: BOARD,
    },
    expected: {
      verdict: "runs",
      edgesOutMm: 11,
      passes: [1, 1],
      says: [/11 mm below the base/, /hole/],
      neverSays: [/[Ff]irst take out/],
    },
  },
  {
    name: "T-slot, table, from the open end",
    bit: bitOf({
      kind: "t-slot",
      diameterMm: 19,
      headHeightMm: 6.35,
      neckDiameterMm: 9.5,
      cuttingLengthMm: 20,
    }),
    mounting: "table",
    cut: {
      kind: "groove",
      depthMm: 20,
      edges: LONG_EDGE,
      work: { lengthMm: 600, widthMm: 150, thicknessMm: 38 },
    },
    expected: {
      verdict: "runs",
      guide: "fence",
      edgesOutMm: 20,
      passes: [1, 1],
      says: [/[Ff]irst take out most/],
    },
  },
  {
    name: "Flutes with a core box, table",
    bit: bitOf({ kind: "core-box", diameterMm: 12.7, cuttingLengthMm: 16 }),
    mounting: "table",
    cut: { kind: "groove", depthMm: 5, edges: LONG_EDGE, work: { ...BOARD, widthMm: 80 } },
    expected: { verdict: "runs", guide: "fence", edgesOutMm: 5, neverSays: [TRAPPED] },
  },
  {
    name: "V-groove in a board, by hand",
    bit: bitOf({ kind: "v-groove", diameterMm: 19, angleDeg: 90 }),
    mounting: "handheld",
    cut: { kind: "groove", depthMm: 4, edges: LONG_EDGE, work: BOARD },
    expected: { verdict: "runs", guide: "straightedge", edgesOutMm: 4 },
  },
  {
    name: "Dado in veneered board with a down-cut spiral, by hand",
    bit: bitOf({ kind: "spiral-down-cut", diameterMm: 12.7, cuttingLengthMm: 31.75 }),
    mounting: "handheld",
    woodId: "plywood",
    cut: { kind: "groove", depthMm: 6, edges: ACROSS_SIDE, work: SHELF_SIDE },
    expected: { verdict: "runs", guide: "straightedge", says: [/chips/] },
  },
  {
    name: "Groove in plywood with a compression spiral, deeper than its up-cut part",
    bit: bitOf({ kind: "spiral-compression", diameterMm: 12.7, cuttingLengthMm: 32, upCutLengthMm: 5 }),
    mounting: "handheld",
    woodId: "plywood",
    cut: { kind: "groove", depthMm: 9, edges: ACROSS_SIDE, work: SHELF_SIDE },
    expected: { verdict: "runs", guide: "straightedge" },
  },
  {
    name: "Splines: a slot in a straight edge with a slot cutter, table",
    bit: bitOf({
      kind: "slot-cutter",
      diameterMm: 47.6,
      slotWidthMm: 6.35,
      pilotDiameterMm: 22.2,
      arborLengthMm: 20,
    }),
    mounting: "table",
    cut: { kind: "edge", edges: LONG_EDGE, work: BOARD },
    // The slot in the middle of the edge: half of it above the middle of the stock.
    expected: {
      verdict: "runs",
      guide: "fence",
      edgesOutMm: 12.675,
      says: [RIGHT_TO_LEFT],
    },
  },
];
