import type { Bit } from "../bit/bit.ts";
import { formPilotRadiusMm } from "../bit/form/registry.ts";
import { type Outline, outlineLengthMm } from "../bit/outline.ts";
import { firstContactMm, radiiInUse, removedAreaMm2 } from "../bit/section.ts";
import { rimRadiusMm } from "../bit/solid.ts";
import { DomainError, type Fault } from "../quantity/fault.ts";
import type { Cut } from "./cut.ts";

/** Which setting is moved from pass to pass. */
export type Approach = "height" | "fence";

/** A cut as geometry: the final setting, and the one setting that is walked up to it. */
export type CutSetup = {
  readonly approach: Approach;
  readonly heightMm: number;
  readonly fenceMm: number;
  readonly thicknessMm: number;
  /** A groove is cut on both sides of the axis, an edge on one. */
  readonly sides: 1 | 2;
  /** From the tip to the first part of the edge that reaches past the fence. */
  readonly contactMm: number;
  /** Greatest radius that touches wood in the whole cut. */
  readonly greatestRadiusMm: number;
  /** How far the moved setting travels from first contact to the end, mm. */
  readonly travelMm: number;
  /** What was taken for granted, by code. */
  readonly assumed: readonly SetupAssumption[];
};

type BaseSetup = Omit<CutSetup, "travelMm" | "contactMm" | "greatestRadiusMm">;

export type SetupAssumption =
  | { readonly code: "thickness-assumed"; readonly thicknessMm: number }
  | { readonly code: "height-assumed"; readonly heightMm: number }
  | { readonly code: "fence-assumed"; readonly fenceMm: number };

/** Stock thickness taken where none is given: 3/4 in. Source: common practice. */
export const ASSUMED_THICKNESS_MM = 19;

/** Where a bit without a pilot cuts an edge, half of it shows past the fence face. */
const HALF_SHOWS_MM = 0;

/** The rounding allowed in a setting typed by a person before it counts as out of reach, mm. */
const REACH_SLACK_MM = 1e-6;

/**
 * The final setting of a cut and how it is walked up to. Throws a DomainError with every fault where
 * the bit cannot be set so: too high for its edges, a fence beyond its rim, or nothing touched.
 */
export function cutSetup(bit: Bit, outline: Outline, cut: Cut): CutSetup {
  const setup = baseSetup(bit, outline, cut);
  const reachMm = outlineLengthMm(outline);
  const pointer = cut.kind === "rabbet" || cut.kind === "groove" ? "/depthMm" : "/heightMm";
  if (setup.heightMm > reachMm + REACH_SLACK_MM) {
    const tipMm =
      setup.heightMm - (cut.kind === "rabbet" || cut.kind === "groove" ? cut.depthMm : setup.heightMm);
    throw new DomainError([
      {
        pointer,
        code: "setting-out-of-reach",
        values: { given: setup.heightMm - tipMm, max: reachMm - tipMm },
      },
    ]);
  }
  const used = radiiInUse(outline, setup);
  if (used === undefined) {
    throw new DomainError([
      { pointer: cut.kind === "rabbet" ? "/widthMm" : "/heightMm", code: "nothing-removed", values: {} },
    ]);
  }
  const contactMm = firstContactMm(outline, setup.fenceMm) ?? 0;
  const travelMm = setup.approach === "height" ? setup.heightMm - contactMm : used.greatestMm - setup.fenceMm;
  return { ...setup, contactMm, greatestRadiusMm: used.greatestMm, travelMm };
}

/** The setting with the moved part `beforeEndMm` short of its end. */
export function settingShortOfEnd(setup: CutSetup, beforeEndMm: number) {
  const { heightMm, fenceMm, thicknessMm } = setup;
  return setup.approach === "height"
    ? { heightMm: heightMm - beforeEndMm, fenceMm, thicknessMm }
    : { heightMm, fenceMm: fenceMm + beforeEndMm, thicknessMm };
}

/** Section in mm² removed by the whole cut up to `beforeEndMm` short of its end. */
export function sectionMm2(outline: Outline, setup: CutSetup, beforeEndMm: number): number {
  return setup.sides * removedAreaMm2(outline, settingShortOfEnd(setup, beforeEndMm));
}

function baseSetup(bit: Bit, outline: Outline, cut: Cut): BaseSetup {
  const pilotRadiusMm = formPilotRadiusMm(bit.form);
  switch (cut.kind) {
    case "groove":
      if (pilotRadiusMm !== undefined) throw unsuitable("a bit without a pilot bearing");
      return {
        approach: "height",
        heightMm: cut.depthMm,
        fenceMm: 0,
        // A groove's work covers the whole bit: nothing of it stands above the wood.
        thicknessMm: cut.depthMm,
        sides: 2,
        assumed: [],
      };
    case "rabbet":
      return rabbetSetup(outline, cut, pilotRadiusMm);
    case "edge":
    case "panel":
      return profileSetup(bit, outline, cut, pilotRadiusMm);
  }
}

function rabbetSetup(
  outline: Outline,
  cut: Extract<Cut, { kind: "rabbet" }>,
  pilotRadiusMm: number | undefined,
): BaseSetup {
  const edges = outline.filter(({ role }) => role === "edge");
  const parallel = edges.every((edge) => edge.kind === "line" && edge.startRadiusMm === edge.endRadiusMm);
  if (!parallel) throw unsuitable("a bit with parallel edges: straight or rabbet");
  const rimMm = rimRadiusMm(outline);
  const largestMm = rimMm - (pilotRadiusMm ?? 0);
  const widthMm = cut.widthMm ?? largestMm;
  if (widthMm > largestMm + REACH_SLACK_MM) {
    throw new DomainError([
      { pointer: "/widthMm", code: "cut-too-wide", values: { given: widthMm, max: largestMm } },
    ]);
  }
  const tipMm = edges[0]?.fromMm ?? 0;
  return {
    approach: "height",
    heightMm: tipMm + cut.depthMm,
    fenceMm: rimMm - widthMm,
    thicknessMm: cut.depthMm,
    sides: 1,
    assumed: cut.widthMm === undefined ? [{ code: "fence-assumed", fenceMm: rimMm - widthMm }] : [],
  };
}

function profileSetup(
  bit: Bit,
  outline: Outline,
  cut: Extract<Cut, { kind: "edge" | "panel" }>,
  pilotRadiusMm: number | undefined,
): BaseSetup {
  const faults: Fault[] = [];
  if (cut.kind === "panel" && bit.form.kind !== "panel-raising") throw unsuitable("a panel-raising bit");
  const heightMm = cut.heightMm ?? outlineLengthMm(outline);
  const fenceMm = cut.fenceMm ?? pilotRadiusMm ?? HALF_SHOWS_MM;
  const thicknessMm = cut.thicknessMm ?? ASSUMED_THICKNESS_MM;
  if (pilotRadiusMm !== undefined && fenceMm < pilotRadiusMm) {
    faults.push({
      pointer: "/fenceMm",
      code: "out-of-range",
      values: { given: fenceMm, min: pilotRadiusMm },
    });
  }
  if (fenceMm >= rimRadiusMm(outline)) {
    faults.push({ pointer: "/fenceMm", code: "nothing-removed", values: {} });
  }
  if (faults.length > 0) throw new DomainError(faults);
  const assumed: SetupAssumption[] = [];
  if (cut.thicknessMm === undefined) assumed.push({ code: "thickness-assumed", thicknessMm });
  if (cut.heightMm === undefined) assumed.push({ code: "height-assumed", heightMm });
  if (cut.fenceMm === undefined) assumed.push({ code: "fence-assumed", fenceMm });
  // Parallel edges cut their full height from the first touch, so only the fence can take it in steps.
  const approach = bit.form.kind === "straight" ? "fence" : "height";
  return { approach, heightMm, fenceMm, thicknessMm, sides: 1, assumed };
}

function unsuitable(suits: string): DomainError {
  return new DomainError([{ pointer: "/kind", code: "cut-does-not-suit-bit", values: { suits } }]);
}
