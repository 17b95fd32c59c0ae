import { BOARD, bitOf, type EverydayPlan, FOUR_EDGES, LONG_EDGE, RIGHT_TO_LEFT } from "./everyday-plan.ts";

const PANEL_STOCK = { lengthMm: 450, widthMm: 300, thicknessMm: 19 } as const;
const RAIL = { lengthMm: 420, widthMm: 57, thicknessMm: 19 } as const;
const RAIL_END = [{ lengthMm: 57, grain: "end" }] as const;
const COVE_PANEL = bitOf(
  {
    kind: "panel-raising",
    diameterMm: 88.9,
    pilotDiameterMm: 12.7,
    profileHeightMm: 14,
    face: "cove",
    shoulderHeightMm: 1.5,
  },
  { massG: 340 },
);
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
const VERTICAL = bitOf({
  kind: "panel-raising-vertical",
  diameterMm: 38.1,
  faceWidthMm: 38,
  faceDepthMm: 11,
  face: "cove",
});

/** Raised panels, frames and the joints that are cut along an edge. Common practice. */
export const PANEL_AND_JOINT_PLANS: readonly EverydayPlan[] = [
  {
    name: "Raised panel with a cove, 88.9 mm, table",
    bit: COVE_PANEL,
    mounting: "table",
    cut: { kind: "panel", edges: FOUR_EDGES, work: PANEL_STOCK },
    expected: {
      verdict: "runs",
      guide: "fence-flush-with-bearing",
      edgesOutMm: 15.5,
      passes: [3, 10],
      maxRpm: 12_000,
      says: [/light last one/, RIGHT_TO_LEFT],
    },
  },
  {
    name: "The same by hand",
    bit: COVE_PANEL,
    mounting: "handheld",
    cut: { kind: "panel", edges: FOUR_EDGES, work: PANEL_STOCK },
    expected: { verdict: "do-not-run", says: [/table/] },
  },
  {
    name: "Raised panel with a back-cutter: only the fence moves",
    bit: bitOf({
      ...{
        kind: "panel-raising",
        diameterMm: 88.9,
        pilotDiameterMm: 15.9,
        profileHeightMm: 11,
        face: "cove",
      },
      ...{ tongueWidthMm: 8, backCutterDiameterMm: 47.6 },
    }),
    mounting: "table",
    cut: { kind: "panel", edges: FOUR_EDGES, work: PANEL_STOCK },
    expected: {
      verdict: "runs",
      passes: [3, 12],
      maxRpm: 12_000,
      says: [/[Ff]or pass 2 set the fence/],
      neverSays: [/[Ff]or pass 2 set the bit/],
    },
  },
  {
    name: "Raised panel with a bevel and a tongue, table",
    bit: bitOf({
      ...{
        kind: "panel-raising",
        diameterMm: 88.9,
        pilotDiameterMm: 12.7,
        profileHeightMm: 12,
        face: "bevel",
      },
      tongueWidthMm: 9,
    }),
    mounting: "table",
    cut: { kind: "panel", edges: FOUR_EDGES, work: PANEL_STOCK },
    expected: { verdict: "runs", edgesOutMm: 13.5, passes: [3, 10], maxRpm: 12_000 },
  },
  {
    name: "Raised panel with an ogee, 73 mm, table",
    bit: bitOf({
      ...{ kind: "panel-raising", diameterMm: 73, pilotDiameterMm: 12.7, profileHeightMm: 13, face: "ogee" },
      tongueWidthMm: 6,
    }),
    mounting: "table",
    cut: { kind: "panel", edges: FOUR_EDGES, work: PANEL_STOCK },
    expected: { verdict: "runs", edgesOutMm: 14.5, passes: [2, 10], maxRpm: 12_000 },
  },
  {
    name: "Panel of 12 mm under a profile of 11 mm",
    bit: bitOf({
      ...{
        kind: "panel-raising",
        diameterMm: 88.9,
        pilotDiameterMm: 12.7,
        profileHeightMm: 9.5,
        face: "cove",
      },
      shoulderHeightMm: 1.5,
    }),
    mounting: "table",
    cut: { kind: "panel", edges: FOUR_EDGES, work: { ...PANEL_STOCK, thicknessMm: 12 } },
    expected: { verdict: "do-not-run", says: [/bearing/] },
  },
  {
    name: "Arched panel, table: the bearing and a pin",
    bit: COVE_PANEL,
    mounting: "table",
    cut: { kind: "panel", curved: true, edges: [{ lengthMm: 320, grain: "end" }], work: PANEL_STOCK },
    expected: {
      verdict: "runs",
      guide: "bearing-and-pin",
      says: [/pin/],
      neverSays: [/[Ss]et the fence/, /[Cc]lose the fence/],
    },
  },
  {
    name: "Raised panel on edge with a vertical bit, table",
    bit: VERTICAL,
    mounting: "table",
    cut: { kind: "panel", edges: FOUR_EDGES, work: PANEL_STOCK },
    expected: {
      verdict: "runs",
      guide: "fence",
      passes: [2, 12],
      says: [/tall fence/, /feather board/i, /upright/],
    },
  },
  {
    name: "The same by hand",
    bit: VERTICAL,
    mounting: "handheld",
    cut: { kind: "panel", edges: FOUR_EDGES, work: PANEL_STOCK },
    expected: { verdict: "do-not-run", says: [/table/] },
  },
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
