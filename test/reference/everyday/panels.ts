import { bitOf, type EverydayPlan, FOUR_EDGES, RIGHT_TO_LEFT } from "./everyday-plan.ts";

const PANEL_STOCK = { lengthMm: 450, widthMm: 300, thicknessMm: 19 } as const;
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
const VERTICAL = bitOf({
  kind: "panel-raising-vertical",
  diameterMm: 38.1,
  faceWidthMm: 38,
  faceDepthMm: 11,
  face: "cove",
});

/** Raised panels. Common practice. */
export const PANEL_PLANS: readonly EverydayPlan[] = [
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
    cut: { kind: "panel", isCurved: true, edges: [{ lengthMm: 320, grain: "end" }], work: PANEL_STOCK },
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
];
