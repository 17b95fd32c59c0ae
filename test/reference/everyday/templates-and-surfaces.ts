import { BOARD, bitOf, type EverydayPlan, LEFT_TO_RIGHT, LONG_EDGE } from "./everyday-plan.ts";

const TIP = bitOf({ kind: "flush-trim", diameterMm: 19, cuttingLengthMm: 32, bearing: "tip" });
const SHANK = bitOf({ kind: "flush-trim", diameterMm: 19, cuttingLengthMm: 32, bearing: "shank" });
const SURFACING = bitOf({ kind: "surfacing", diameterMm: 50.8, cuttingLengthMm: 12.7 });
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
      curved: true,
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
      curved: true,
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
      curved: true,
      edges: LONG_EDGE,
    },
    expected: { verdict: "do-not-run", says: [/waste|saw|too much|at most/] },
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
