import { FORMS, type FormKind, formOutline, isParallel, isUndercut } from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { EXAMPLE_FORMS, nameOf } from "./example-forms.ts";

type Shape = { undercut: boolean; parallel: boolean; reason: string };

// Which bits hold the wood they stand in. Common practice.
const SHAPES: Record<FormKind, Shape> = {
  straight: { undercut: false, parallel: true, reason: "its edges are parallel" },
  "spiral-up-cut": { undercut: false, parallel: true, reason: "its edges are parallel" },
  "spiral-down-cut": { undercut: false, parallel: true, reason: "its edges are parallel" },
  "spiral-compression": { undercut: false, parallel: true, reason: "its edges are parallel" },
  "flush-trim": { undercut: false, parallel: true, reason: "its bearing is as wide as its edges" },
  rabbet: { undercut: false, parallel: true, reason: "its edges are parallel, the pilot is at the tip" },
  "slot-cutter": { undercut: false, parallel: true, reason: "without an arbor the disc ends at the table" },
  chamfer: { undercut: false, parallel: false, reason: "it widens all the way" },
  "v-groove": { undercut: false, parallel: false, reason: "it widens all the way" },
  "round-over": { undercut: false, parallel: false, reason: "its curve widens all the way" },
  beading: { undercut: false, parallel: false, reason: "its curve widens, its fillet is parallel" },
  cove: { undercut: false, parallel: false, reason: "its curve widens all the way" },
  "core-box": { undercut: false, parallel: false, reason: "its nose widens, its sides are parallel" },
  bullnose: { undercut: true, parallel: false, reason: "the hollow is narrower than the rim at the tip" },
  ogee: { undercut: false, parallel: false, reason: "both curves widen" },
  thumbnail: { undercut: false, parallel: false, reason: "its curve widens all the way" },
  dovetail: { undercut: true, parallel: false, reason: "it is widest at the tip" },
  keyhole: { undercut: true, parallel: false, reason: "its neck is narrower than its head" },
  "t-slot": { undercut: true, parallel: false, reason: "its neck is narrower than its head" },
  tongue: { undercut: true, parallel: false, reason: "the gap is narrower than the cutter at the tip" },
  groove: {
    undercut: true,
    parallel: false,
    reason: "the part nearest the shank is narrower than the cutter",
  },
  cope: {
    undercut: true,
    parallel: false,
    reason: "the gap for the tongue is narrower than the back cutter",
  },
  stick: {
    undercut: true,
    parallel: false,
    reason: "the flat is narrower than the groove cutter at the tip",
  },
  "lock-mitre": {
    undercut: true,
    parallel: false,
    reason: "the faces of its lock run back toward the axis",
  },
  "drawer-joint": { undercut: true, parallel: false, reason: "the second part is narrower than the first" },
  "finger-joint": { undercut: true, parallel: false, reason: "gaps follow fingers" },
  "panel-raising": { undercut: false, parallel: false, reason: "its face widens all the way" },
  "panel-raising-vertical": { undercut: false, parallel: false, reason: "its face widens all the way" },
  surfacing: { undercut: false, parallel: true, reason: "its edges are parallel" },
  custom: { undercut: true, parallel: false, reason: "the example steps in from 15 to 11 mm" },
};

/** Examples that are not what their kind mostly is. */
const EXCEPTIONS: Record<string, Partial<Shape>> = {
  "slot-cutter with an arbor": { undercut: true, parallel: false },
  "panel-raising with a back-cutter": { undercut: true },
};

describe("undercut and parallel", () => {
  it("is said of every kind", () => {
    expect(Object.keys(SHAPES).sort()).toEqual(FORMS.map(({ kind }) => kind).sort());
  });

  it.each(EXAMPLE_FORMS.map((form) => [nameOf(form), SHAPES[form.kind].reason, form] as const))(
    "%s (%s)",
    (_, __, form) => {
      const outline = formOutline(form);
      const want = { ...SHAPES[form.kind], ...EXCEPTIONS[exceptionOf(form)] };
      expect(isUndercut(outline)).toBe(want.undercut);
      expect(isParallel(outline)).toBe(want.parallel);
    },
  );
});

function exceptionOf(form: (typeof EXAMPLE_FORMS)[number]): string {
  if (form.kind === "slot-cutter" && form.arborLengthMm !== undefined) return "slot-cutter with an arbor";
  if (form.kind === "panel-raising" && form.backCutterDiameterMm !== undefined)
    return "panel-raising with a back-cutter";
  return "";
}
