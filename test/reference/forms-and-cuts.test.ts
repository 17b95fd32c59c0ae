import {
  type Bit,
  type Cut,
  type CutKind,
  DEFAULT_POLICY,
  DomainError,
  FORMS,
  type Form,
  type FormKind,
  formOutline,
  makePlan,
  outlineLengthMm,
  usualCut,
  woodById,
} from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { EXAMPLE_FORMS } from "./example-forms.ts";

/** The cuts each bit is made for, the main one first. Source: common practice. */
const MADE_FOR: Readonly<Record<FormKind, readonly CutKind[]>> = {
  straight: ["groove", "rabbet", "edge", "surface", "inlay"],
  "spiral-up-cut": ["groove", "rabbet", "edge", "surface", "inlay"],
  "spiral-down-cut": ["groove", "rabbet", "edge", "surface", "inlay"],
  "spiral-compression": ["groove", "rabbet", "edge", "surface", "inlay"],
  "flush-trim": ["trim"],
  rabbet: ["rabbet", "edge"],
  "slot-cutter": ["edge", "groove"],
  chamfer: ["edge", "groove"],
  "v-groove": ["groove", "edge"],
  "round-over": ["edge"],
  beading: ["edge"],
  cove: ["edge"],
  "core-box": ["groove", "edge"],
  bullnose: ["edge"],
  ogee: ["edge"],
  thumbnail: ["edge"],
  dovetail: ["groove", "joint", "edge"],
  keyhole: ["groove"],
  "t-slot": ["groove"],
  tongue: ["joint", "edge"],
  groove: ["joint", "edge"],
  cope: ["joint", "edge"],
  stick: ["joint", "edge"],
  "lock-mitre": ["joint", "edge"],
  "drawer-joint": ["joint", "edge"],
  "finger-joint": ["joint", "edge"],
  "panel-raising": ["panel", "edge"],
  "panel-raising-vertical": ["panel", "edge"],
  surfacing: ["surface", "groove", "rabbet", "edge"],
  custom: ["edge", "joint", "rabbet", "groove", "surface"],
};

/** Kinds of cut that only bits of certain forms make; the others ask for a shape. Source: common practice. */
const BY_FORM: readonly CutKind[] = ["panel", "joint"];

/** Beside the examples of every form: bits whose dimensions allow what those of the examples do not. */
const MORE_FORMS: readonly Form[] = [
  { kind: "slot-cutter", diameterMm: 47.6, slotWidthMm: 3 },
  { kind: "t-slot", diameterMm: 12.7, headHeightMm: 4, neckDiameterMm: 6.35, cuttingLengthMm: 10 },
  {
    kind: "custom",
    diameterMm: 20,
    startRadiusMm: 10,
    segments: [{ kind: "line", toMm: 25, radiusMm: 10 }],
  },
];

const edges = [{ lengthMm: 600, grain: "long" as const }];

describe.each(FORMS)("a $kind bit", ({ kind, suits }) => {
  const bits = [...EXAMPLE_FORMS, ...MORE_FORMS].filter((form) => form.kind === kind).map(bitOf);

  it("says what the trade makes with it", () => {
    expect(suits).toEqual(MADE_FOR[kind]);
  });

  it.each(suits)("makes the %s cut it says", (cut) => {
    const planned = bits.flatMap((bit) => planOf(bit, cutOf(cut, bit.form)) ?? []);
    expect(planned.some(({ passes }) => passes.length > 0)).toBe(true);
  });

  it("is refused a cut that takes a bit of another form", () => {
    for (const cut of BY_FORM.filter((each) => !suits.includes(each))) {
      for (const bit of bits) expect(() => planOf(bit, cutOf(cut, bit.form), "/cut/kind")).not.toThrow();
    }
  });

  it("is planned with its usual cut, which is one of those it says", () => {
    const planned = bits.flatMap((bit) => planOf(bit, usualCut(bit)) ?? []);
    expect(planned.some(({ passes }) => passes.length > 0)).toBe(true);
    for (const bit of bits) expect(suits).toContain(usualCut(bit).kind);
  });
});

function bitOf(form: Form): Bit {
  return { form, shankDiameterMm: 12.7, wings: 2 };
}

/** A light cut of this kind, as deep as the form must go or a few millimetres. */
function cutOf(kind: CutKind, form: Form): Cut {
  const lengthMm = outlineLengthMm(formOutline(form));
  switch (kind) {
    case "edge":
    case "panel":
      return { kind, edges, thicknessMm: 40 };
    case "joint":
      // Stock as thick as the bit is long is the thickest that any joint bit takes.
      return { kind, edges, thicknessMm: Math.min(40, lengthMm) };
    case "groove":
      return { kind, edges, depthMm: lengthMm };
    case "rabbet":
      return { kind, edges, depthMm: 5, widthMm: 3 };
    case "trim":
      return { kind, edges, overhangMm: 1.5 };
    case "inlay":
      return { kind, edges, depthMm: 3, part: "recess", bushingDiameterMm: 40 };
    case "surface":
      return { kind, edges, depthMm: 1, widthMm: 200 };
  }
}

/** The plan, or undefined if this bit's own dimensions do not allow the cut; its first fault must point where it is said to. */
function planOf(bit: Bit, cut: Cut, refusedAt?: string) {
  const wood = woodById("black-cherry");
  if (wood === undefined) throw new Error("no cherry");
  const router = {
    minRpm: 10_000,
    maxRpm: 22_000,
    dial: { marks: { first: 1, last: 6 } },
    inputPowerW: 1800,
  };
  // A surface is planed with the router on rails, and an inlay cut along a template, by hand: common practice.
  const mounting = cut.kind === "surface" || cut.kind === "inlay" ? "handheld" : "table";
  try {
    return makePlan({ bit, router, mounting, wood, cut, policy: DEFAULT_POLICY });
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    if (refusedAt !== undefined) expect(error.faults).toMatchObject([{ pointer: refusedAt }]);
    return undefined;
  }
}
