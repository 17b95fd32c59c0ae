import { formOutline } from "../bit/form/registry.ts";
import { edgesFromMm } from "../bit/outline.ts";
import { type BitSetting, radiiInUse } from "../bit/section.ts";
import { DomainError } from "../quantity/fault.ts";
import { type Range, rangeFaults } from "../quantity/range.ts";
import { closeJoint, type JointClosure } from "./close-joint.ts";
import type { JointFinding } from "./finding.ts";
import type { JointHalf } from "./half.ts";
import type { JointKind } from "./joint-kind.ts";
import { closureFindings } from "./judge-closure.ts";
import {
  type Bits,
  formOf,
  type HalfDefinition,
  type HalfName,
  type Halves,
  type JointAsked,
  type JointDefinition,
} from "./kind/define.ts";
import { jointDefinition } from "./kind/registry.ts";

/** Accepted sizes of a joint, mm. */
export const JOINT_RANGES = {
  thicknessMm: { min: 3, max: 150 },
  otherThicknessMm: { min: 3, max: 150 },
  clearanceMm: { min: 0, max: 3 },
  depthMm: { min: 0.5, max: 100 },
} as const satisfies Readonly<Record<keyof JointAsked, Range>>;

const ASKED = ["thicknessMm", "otherThicknessMm", "clearanceMm", "depthMm"] as const;

/** The cut of one half, without its edges: as a plan takes it. */
export type JointCut =
  | {
      readonly kind: "joint" | "edge" | "panel";
      readonly heightMm: number;
      readonly fenceMm: number;
      readonly thicknessMm: number;
    }
  | { readonly kind: "groove"; readonly depthMm: number }
  | { readonly kind: "rabbet"; readonly depthMm: number; readonly widthMm: number };

/** What a test piece of one half must measure, mm. */
export type HalfMeasures = {
  /** From the face that lay on the table to the near side of tongue or groove, or to the step; of a dovetail, how deep it is. */
  readonly fromFaceMm: number;
  /** How far the cut reaches in from the edge, or from the middle of a groove in a face. */
  readonly reachMm: number;
  /** How wide the groove is, or how thick what goes into it; undefined if the one bit decides. */
  readonly thicknessMm: number | undefined;
};

export type SolvedHalf = JointHalf & {
  readonly name: HalfName;
  readonly cut: JointCut;
  readonly measures: HalfMeasures;
};

export type SolvedJoint = {
  readonly first: SolvedHalf;
  readonly second: SolvedHalf;
  /** The halves laid on each other at these settings, by the bits as they measure now. */
  readonly closure: JointClosure;
  readonly findings: readonly JointFinding[];
};

/**
 * The settings of both halves that give the fit asked, flush faces first, what a test piece of each must measure, and what these bits
 * cannot give: a tongue that is too thick for its groove, with the shims that put it right; faces that are not flush; what stays open.
 * Throws a DomainError if a size is out of range, a bit does not cut its half (`/0/form/kind`), or the stock is too thick or too thin for the bits
 * (`/thicknessMm`, `/otherThicknessMm`).
 * @example
 * const form = { kind: "lock-mitre", diameterMm: 69.9, cuttingLengthMm: 22, lockDepthMm: 2.5 };
 * const bit = { form, shankDiameterMm: 12.7, wings: 2 };
 * solveJoint("lock-mitre", [bit, bit], { thicknessMm: 18 }).first.setting // → { heightMm: 20, fenceMm: 14.95, thicknessMm: 18 }
 */
export function solveJoint(kind: JointKind, bits: Bits, asked: JointAsked): SolvedJoint {
  const faults = ASKED.flatMap((name) => rangeFaults(`/${name}`, asked[name], JOINT_RANGES[name]));
  if (faults.length > 0) throw new DomainError(faults);
  const definition = jointDefinition(kind);
  const [one, two] = definition.halves;
  formOf(bits[0], 0, one.forms);
  formOf(bits[1], 1, two.forms);
  const [setting, otherSetting] = definition.settings(bits, asked);
  return solved(
    definition,
    [
      { bit: bits[0], setting },
      { bit: bits[1], setting: otherSetting, acrossMm: asked.otherThicknessMm ?? asked.thicknessMm },
    ],
    asked.clearanceMm,
  );
}

/** Two halves at their settings, with everything that follows from these. */
export function solved(definition: JointDefinition, halves: Halves, clearanceMm = 0): SolvedJoint {
  const closure = closeJoint(definition.kind, ...halves);
  const meetAtMm = definition.meetAtMm(halves);
  const goesInMm = definition.goesInMm?.(halves);
  const [first, second] = halves;
  const measured = (half: JointHalf, place: 0 | 1): SolvedHalf => {
    const thicknessMm = goesInMm?.[place];
    const fromMiddleMm = definition.meetsBy === "middle" ? (thicknessMm ?? 0) / 2 : 0;
    const fromFaceMm = definition.closes === "slid" ? half.setting.heightMm : meetAtMm[place] - fromMiddleMm;
    return {
      ...half,
      name: definition.halves[place].name,
      cut: cutOf(definition.halves[place], half),
      measures: {
        fromFaceMm,
        reachMm: reachOf(half),
        thicknessMm,
      },
    };
  };
  return {
    first: measured(first, 0),
    second: measured(second, 1),
    closure,
    findings: closureFindings(definition, halves, closure, clearanceMm),
  };
}

function cutOf({ cut }: HalfDefinition, half: JointHalf): JointCut {
  const { heightMm, fenceMm, thicknessMm }: BitSetting = half.setting;
  switch (cut) {
    case "groove":
      return { kind: cut, depthMm: heightMm };
    case "rabbet":
      return {
        kind: cut,
        depthMm: heightMm - edgesFromMm(formOutline(half.bit.form)),
        widthMm: reachOf(half),
      };
    default:
      return { kind: cut, heightMm, fenceMm, thicknessMm };
  }
}

function reachOf({ bit, setting }: JointHalf): number {
  return (radiiInUse(formOutline(bit.form), setting)?.greatestMm ?? setting.fenceMm) - setting.fenceMm;
}
