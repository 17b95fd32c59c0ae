import type { Bit } from "../../bit/bit.ts";
import type { CutKind } from "../../bit/form/usual-cut.ts";
import type { Outline } from "../../bit/outline.ts";
import type { BitNeed } from "../../quantity/fault.ts";
import { type FieldSpecs, type FieldsOf, optionalChoice } from "../../quantity/field.ts";
import type { BaseSetup } from "../base-setup.ts";
import type { Edge } from "../edge.ts";
import { GUIDE_NAMES } from "../guide-name.ts";
import type { SetIn } from "../settable.ts";
import type { Work } from "../work.ts";

/** What every kind of cut takes beside its edges. Against the rotation is the only ordinary way; the other pulls. */
export const EVERY_CUT_FIELDS = {
  feedDirection: optionalChoice(
    "Default: against the rotation. With it (a climb cut) only a light bite is planned.",
    ["against-rotation", "with-rotation"],
  ),
  guide: optionalChoice(
    "What guides the work or the router. Default: the first that serves, which the assumptions name.",
    GUIDE_NAMES,
  ),
};

/** How a cut of one kind is set, its type read off the specifications of its fields. */
export type CutSettingsOf<Kind extends CutKind, Specs extends FieldSpecs> = {
  readonly kind: Kind;
} & FieldsOf<typeof EVERY_CUT_FIELDS> &
  FieldsOf<Specs>;

/** A cut of one kind: its settings, and what is cut. */
export type CutOf<Kind extends CutKind, Specs extends FieldSpecs> = {
  readonly edges: readonly Edge[];
  /** The piece that is held; what is not said of it is taken on the cautious side. */
  readonly work?: Work;
} & CutSettingsOf<Kind, Specs>;

/** What a bit must have for a kind of cut. */
export type Need = { readonly code: BitNeed; readonly isMetBy: (bit: Bit, outline: Outline) => boolean };

/** One kind of cut: everything the program knows of it. Wire schema, validation, documents and setting follow. */
export type CutDefinition<Kind extends CutKind, Specs extends FieldSpecs> = {
  readonly kind: Kind;
  readonly meaning: string;
  /** Its own fields, beside those of every cut. */
  readonly fields: Specs;
  /** A groove is cut on both sides of the axis, an edge on one. */
  readonly sides: 1 | 2;
  /** Undefined if any bit will do. */
  readonly needs: Need | undefined;
  /** The final setting and how it is walked up to, for a bit that has what the cut needs, every setting between as `setIn` says. Throws a DomainError if there is none. */
  readonly setup: (bit: Bit, outline: Outline, cut: FieldsOf<Specs>, setIn: SetIn | undefined) => BaseSetup;
};

/** Ties a kind of cut to the types of its fields; adds nothing at run time. */
export function defineCut<const Kind extends CutKind, const Specs extends FieldSpecs>(
  definition: CutDefinition<Kind, Specs>,
): CutDefinition<Kind, Specs> {
  return definition;
}
