import { BOARD, bitOf, type EverydayPlan, LONG_EDGE, RIGHT_TO_LEFT } from "./everyday-plan.ts";

const RAIL = { lengthMm: 420, widthMm: 57, thicknessMm: 19 } as const;
const RAIL_END = [{ lengthMm: 57, grain: "end" }] as const;
const COPE = bitOf({
  kind: "cope",
  diameterMm: 41.3,
  grooveWidthMm: 6.35,
  grooveDepthMm: 9.53,
  radiusMm: 6,
  landMm: 2,
});
const FINGERS = bitOf({
  kind: "finger-joint",
  diameterMm: 35,
  fingers: 5,
  fingerHeightMm: 4,
  fingerDepthMm: 9,
});

/** Frames and the joints that are cut along an edge. Common practice. */
export const JOINT_PLANS: readonly EverydayPlan[] = [
  {
    name: "Tongue centred on 19 mm stock, table",
    bit: bitOf({
      ...{
        kind: "tongue",
        diameterMm: 41.3,
        tongueThicknessMm: 6.35,
        tongueLengthMm: 9.53,
        cuttingLengthMm: 25,
      },
      pilot: "none",
    }),
    mounting: "table",
    cut: { kind: "joint", edges: LONG_EDGE, work: BOARD },
    expected: {
      verdict: "runs",
      guide: "fence",
      edgesOutMm: 22,
      says: [RIGHT_TO_LEFT, /same face|face down/],
    },
  },
  {
    name: "Its groove, table",
    bit: bitOf({
      ...{ kind: "groove", diameterMm: 41.3, grooveWidthMm: 6.35, grooveDepthMm: 9.53, cuttingLengthMm: 25 },
      pilot: "none",
    }),
    mounting: "table",
    cut: { kind: "joint", edges: LONG_EDGE, work: BOARD },
    expected: { verdict: "runs", guide: "fence", edgesOutMm: 22, says: [RIGHT_TO_LEFT] },
  },
  {
    name: "Coped rail ends, table, on a sled with a backer",
    bit: COPE,
    mounting: "table",
    cut: { kind: "joint", edges: RAIL_END, work: { ...RAIL, count: 4 } },
    expected: {
      verdict: "runs",
      guide: "sled",
      says: [/sled/, /[Bb]ack/, /same (face|thickness)|face down/],
    },
  },
  {
    name: "Stuck rails and stiles, table",
    bit: bitOf({
      kind: "stick",
      diameterMm: 41.3,
      grooveWidthMm: 6.35,
      grooveDepthMm: 9.53,
      radiusMm: 6,
      landMm: 2,
    }),
    mounting: "table",
    cut: { kind: "joint", edges: LONG_EDGE, work: { lengthMm: 600, widthMm: 57, thicknessMm: 19 } },
    expected: { verdict: "runs", says: [RIGHT_TO_LEFT, /feather board/i] },
  },
  {
    name: "Cope by hand",
    bit: COPE,
    mounting: "handheld",
    cut: { kind: "joint", edges: RAIL_END, work: RAIL },
    expected: { verdict: "do-not-run", says: [/table/] },
  },
  {
    name: "Lock mitre on 19 mm stock, table: half the bit at half the stock",
    bit: bitOf({ kind: "lock-mitre", diameterMm: 69.9, cuttingLengthMm: 22, lockDepthMm: 2.5 }),
    mounting: "table",
    cut: { kind: "joint", edges: LONG_EDGE, work: BOARD },
    expected: { verdict: "runs", guide: "fence", edgesOutMm: 20.5, maxRpm: 12_000 },
  },
  {
    name: "Drawer joint on 12 mm stock, table",
    bit: bitOf({ kind: "drawer-joint", diameterMm: 25.4, cuttingLengthMm: 12.7, stepMm: 4, stepHeightMm: 6 }),
    mounting: "table",
    cut: {
      kind: "joint",
      edges: [{ lengthMm: 120, grain: "end" }],
      work: { lengthMm: 400, widthMm: 120, thicknessMm: 12 },
    },
    expected: { verdict: "runs", edgesOutMm: 12.35 },
  },
  {
    name: "Finger joint on the end of 19 mm stock, table",
    bit: FINGERS,
    mounting: "table",
    cut: {
      kind: "joint",
      edges: [{ lengthMm: 90, grain: "end" }],
      work: { lengthMm: 500, widthMm: 90, thicknessMm: 19 },
    },
    expected: { verdict: "runs", guide: "sled", edgesOutMm: 27.5 },
  },
  {
    name: "Finger joint by hand",
    bit: FINGERS,
    mounting: "handheld",
    cut: { kind: "joint", edges: LONG_EDGE, work: BOARD },
    expected: { verdict: "do-not-run", says: [/table/] },
  },
];
