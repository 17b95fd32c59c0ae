import { BOARD, bitOf, type EverydayPlan, LEFT_TO_RIGHT, LONG_EDGE } from "./everyday-plan.ts";

const TIP = bitOf({ kind: "flush-trim", diameterMm: 19, cuttingLengthMm: 32, bearing: "tip" });
const SHANK = bitOf({ kind: "flush-trim", diameterMm: 19, cuttingLengthMm: 32, bearing: "shank" });
const SURFACING = bitOf({ kind: "surfacing", diameterMm: 50.8, cuttingLengthMm: 12.7 });
/** The bit of the usual inlay set: 1/8 in. It cuts at its end. */
const INLAY = bitOf(
  { kind: "spiral-down-cut", diameterMm: 3.175, cuttingLengthMm: 12.7 },
  { isEndCutting: true, shankDiameterMm: 6.35 },
);
const OUTLINE = [{ lengthMm: 300, grain: "across" }] as const;
const SLAB = { lengthMm: 1200, widthMm: 400, thicknessMm: 50 } as const;
const ROWS = [{ lengthMm: 1200, grain: "long" }] as const;

/** Trimming to a template, recesses and surfaces. Common practice. */
export const TEMPLATE_AND_SURFACE_PLANS: readonly EverydayPlan[] = [
  {
    name: "Leg trimmed to a template on top of it, bearing at the tip, table",
    bit: TIP,
    mounting: "table",
    cut: {
      kind: "trim",
      overhangMm: 2,
      thicknessMm: 19,
      templateThicknessMm: 9,
      isCurved: true,
      edges: LONG_EDGE,
    },
    expected: { verdict: "runs", guide: "template", says: [/template/], neverSays: [/[Ss]et the fence/] },
  },
  {
    name: "The same with the bearing at the shank: the template lies on the table",
    bit: SHANK,
    mounting: "table",
    cut: {
      kind: "trim",
      overhangMm: 2,
      thicknessMm: 19,
      templateThicknessMm: 9,
      isCurved: true,
      edges: LONG_EDGE,
    },
    expected: { verdict: "runs", guide: "template", says: [/template/], neverSays: [/[Ss]et the fence/] },
  },
  {
    name: "Edging trimmed flush with a face, by hand",
    bit: TIP,
    mounting: "handheld",
    cut: { kind: "trim", overhangMm: 1, thicknessMm: 19, edges: LONG_EDGE },
    expected: { verdict: "runs", guide: "template", says: [LEFT_TO_RIGHT, /below the base/] },
  },
  {
    name: "Ten millimetres of waste left for a trim bit",
    bit: TIP,
    mounting: "table",
    cut: {
      kind: "trim",
      overhangMm: 9,
      thicknessMm: 19,
      templateThicknessMm: 9,
      isCurved: true,
      edges: LONG_EDGE,
    },
    expected: { verdict: "do-not-run", says: [/waste|saw|too much|at most/] },
  },
  {
    name: "Inlay's recess with a sleeve on the bushing, by hand",
    bit: INLAY,
    mounting: "handheld",
    cut: { kind: "inlay", part: "recess", depthMm: 3, bushingDiameterMm: 14.29, edges: OUTLINE, work: BOARD },
    expected: {
      verdict: "runs",
      guide: "template-and-bushing",
      // Through a template of 6 mm.
      edgesOutMm: 9,
      says: [
        /opening is larger than the recess by 5\.56 mm/,
        /bushing of 7\.94 mm/,
        /clockwise around the inside/,
      ],
      neverSays: [/[Ss]et the fence/, /plunge this bit/],
    },
  },
  {
    name: "The inlay's plug from the same template, by hand",
    bit: INLAY,
    mounting: "handheld",
    cut: { kind: "inlay", part: "plug", depthMm: 4, bushingDiameterMm: 7.94, edges: OUTLINE, work: BOARD },
    expected: {
      verdict: "runs",
      guide: "template-and-bushing",
      edgesOutMm: 10,
      says: [/opening is larger than the plug by 5\.56 mm/, /bushing of 14\.29 mm/, /waste board/],
    },
  },
  {
    name: "Round table top cut to a template with a bushing, by hand",
    bit: bitOf({ kind: "straight", diameterMm: 12.7, cuttingLengthMm: 31.75 }),
    mounting: "handheld",
    cut: {
      kind: "edge",
      isCurved: true,
      bushingDiameterMm: 19.05,
      templateThicknessMm: 9,
      edges: [{ lengthMm: 1900, grain: "end" }],
      work: BOARD,
    },
    expected: {
      verdict: "runs",
      guide: "template-and-bushing",
      // The template, the board, and 2 mm below it.
      edgesOutMm: 9 + 19 + 2,
      says: [/smaller than the finished piece by 3\.18 mm/, /counter-clockwise/],
      neverSays: [/test piece/, /[Ss]et the fence/],
    },
  },
  {
    name: "Slab surfaced on rails, by hand",
    bit: SURFACING,
    mounting: "handheld",
    cut: { kind: "surface", depthMm: 1.5, widthMm: 400, edges: ROWS, work: SLAB },
    expected: {
      verdict: "runs",
      guide: "rails",
      edgesOutMm: 1.5,
      maxRpm: 18_000,
      says: [/rails/, /row/],
      neverSays: [/[Ss]et the fence/, /starting pin/],
    },
  },
  {
    name: "Slab surfaced 4 mm deep on rails: in several passes",
    bit: SURFACING,
    mounting: "handheld",
    cut: { kind: "surface", depthMm: 4, widthMm: 400, edges: ROWS, work: SLAB },
    expected: { verdict: "runs", guide: "rails", passes: [2, 6] },
  },
  {
    name: "Slab pushed over a surfacing bit in a table",
    bit: SURFACING,
    mounting: "table",
    cut: { kind: "surface", depthMm: 1.5, widthMm: 400, edges: ROWS, work: SLAB },
    expected: { verdict: "do-not-run", says: [/rails|by hand|handheld/] },
  },
  {
    name: "Lettering freehand",
    bit: bitOf({ kind: "v-groove", diameterMm: 12.7, angleDeg: 60 }),
    mounting: "handheld",
    cut: {
      kind: "groove",
      depthMm: 3,
      guide: "freehand",
      edges: [{ lengthMm: 120, grain: "across" }],
      work: BOARD,
    },
    expected: { verdict: "do-not-run", says: [/straightedge|template/] },
  },
];
