import type { Bit } from "../../bit/bit.ts";
import { type Form, type FormKind, formOutline, formPilotRadiusMm } from "../../bit/form/registry.ts";
import type { BitSetting } from "../../bit/section.ts";
import { rimRadiusMm } from "../../bit/solid.ts";
import { DomainError } from "../../quantity/fault.ts";
import type { JointFinding } from "../finding.ts";
import type { JointHalf } from "../half.ts";
import type { JointKind } from "../joint-kind.ts";

/** The part one half plays, in the order in which the halves are given. */
export type HalfName =
  | "stick"
  | "cope"
  | "groove"
  | "tongue"
  | "lying"
  | "standing"
  | "face-up"
  | "face-down"
  | "tail"
  | "frame"
  | "panel";

/** The joint that is wanted. */
export type JointAsked = {
  /** Thickness of the first half's work. */
  readonly thicknessMm: number;
  /** Thickness of the other half's. Default: the same. */
  readonly otherThicknessMm?: number;
  /** Play of what goes in, both sides together. Default: none. */
  readonly clearanceMm?: number;
  /** How deep a dovetail or a slot is, or how wide a lap. Default: what the bits or the stock give. */
  readonly depthMm?: number;
};

export type Bits = readonly [Bit, Bit];
export type Halves = readonly [JointHalf, JointHalf];
export type Settings = readonly [BitSetting, BitSetting];

/** One half of a joint. */
export type HalfDefinition = {
  readonly name: HalfName;
  /** The forms of bits that cut it. */
  readonly forms: readonly FormKind[];
  /** The kind of cut it is. */
  readonly cut: "joint" | "edge" | "panel" | "rabbet" | "groove";
};

/** One joint: everything the program knows of it. */
export type JointDefinition = {
  readonly kind: JointKind;
  readonly meaning: string;
  readonly halves: readonly [HalfDefinition, HalfDefinition];
  /** Whether the other half is turned over, or lies with the same face down. */
  readonly isTurnedOver: boolean;
  /** Whether the halves are pushed together edge to edge, or the other is slid along the middle of the first. */
  readonly closes: "pushed" | "slid";
  /** Whether the halves make a corner whose end is flush with the other's face. */
  readonly isCorner: boolean;
  /** Heights above the table, in each half as it is cut, of the places that come to lie on each other, mm. */
  readonly meetAtMm: (halves: Halves) => readonly [number, number];
  /** Whether these are the middles of groove and tongue, or a side of them. */
  readonly meetsBy: "middle" | "side";
  /** The settings at which fresh bits make it fit with flush faces. Throws a DomainError if the stock is too thick or too thin for them. */
  readonly settings: (bits: Bits, asked: JointAsked) => Settings;
  /** How wide the first half opens, and how thick what goes in is, mm. Undefined if every part is as the one bit makes it. */
  readonly goesInMm: ((halves: Halves) => readonly [openingMm: number, thicknessMm: number]) | undefined;
  /** Whether the halves touch along the whole joint when they fit. A panel only sits in its groove. */
  readonly touchesThroughout: boolean;
  /** What the closing of the walls does not show. */
  readonly findings?: (halves: Halves) => JointFinding[];
  /** What makes the fit of the part that goes in: a height or a fence, or the bits alone, with shims. */
  readonly fitBy: "height" | "fence" | "bits";
};

export function defineJoint(definition: JointDefinition): JointDefinition {
  return definition;
}

/** A bit's form as one of these kinds. Throws a DomainError that names them if it is another. */
export function formOf<Kind extends FormKind>(
  { form }: Bit,
  half: 0 | 1,
  kinds: readonly Kind[],
): Form<Kind> {
  if (isOf(form, kinds)) return form;
  const pointer = `/${half}/form/kind`;
  throw new DomainError([{ pointer, code: "unknown-choice", values: { names: kinds } }]);
}

/** The fence in mm at which a bit reaches so far past it: its bearing's radius if it has one that says otherwise. */
export function fenceForReachMm({ form }: Bit, reachMm: number): number {
  return formPilotRadiusMm(form) ?? rimRadiusMm(formOutline(form)) - reachMm;
}

/** A fault if the stock is thicker than a joint's bit can make, or so thin that nothing is left. */
export function mustBeThick(thicknessMm: number, { above, max }: { above?: number; max?: number }): void {
  const pointer = "/thicknessMm";
  if (max !== undefined && thicknessMm > max + ROUNDING_MM) {
    throw new DomainError([{ pointer, code: "setting-out-of-reach", values: { given: thicknessMm, max } }]);
  }
  if (above !== undefined && thicknessMm <= above) {
    throw new DomainError([{ pointer, code: "out-of-range", values: { given: thicknessMm, above } }]);
  }
}

/** Rounding of a thickness that is just what the bit makes, mm. */
const ROUNDING_MM = 1e-6;

function isOf<Kind extends FormKind>(form: Form, kinds: readonly Kind[]): form is Form<Kind> {
  return kinds.some((kind) => kind === form.kind);
}
