import type { Bit } from "../../bit/bit.ts";
import { formsThatSuit } from "../../bit/form/registry.ts";
import type { CutKind } from "../../bit/form/usual-cut.ts";
import type { Outline } from "../../bit/outline.ts";
import { DomainError } from "../../quantity/fault.ts";
import type { FieldSpecs } from "../../quantity/field.ts";
import type { BaseSetup } from "../base-setup.ts";
import type { SetIn } from "../settable.ts";
import type { CutDefinition, CutOf, CutSettingsOf, Need } from "./define.ts";
import { edge } from "./edge.ts";
import { groove } from "./groove.ts";
import { inlay } from "./inlay.ts";
import { joint } from "./joint.ts";
import { panel } from "./panel.ts";
import { rabbet } from "./rabbet.ts";
import { surface } from "./surface.ts";
import { trim } from "./trim.ts";

/** Every kind of cut, one line each. Adding one is its file, a line here and its name in `bit/form/usual-cut.ts`. */
const DEFINITIONS = { edge, panel, joint, rabbet, groove, inlay, trim, surface };

type FieldsByKind = { [Kind in CutKind]: (typeof DEFINITIONS)[Kind]["fields"] };
type DefinitionByKind = { [Kind in CutKind]: CutDefinition<Kind, FieldsByKind[Kind]> };
type CutByKind = { [Kind in CutKind]: CutOf<Kind, FieldsByKind[Kind]> };
type SettingsByKind = { [Kind in CutKind]: CutSettingsOf<Kind, FieldsByKind[Kind]> };

/**
 * A cut to plan, discriminated by `kind`. `heightMm` is how far the bit stands out of the table or base; `fenceMm` is how far its
 * axis stands behind the fence face or pilot contact (one frame for table and handheld).
 */
export type Cut<Kind extends CutKind = CutKind> = CutByKind[Kind];

/** How a cut is set, without what is cut: the same for every piece of every part. */
export type CutSettings<Kind extends CutKind = CutKind> = SettingsByKind[Kind];

/** What the rest of the program may know of a kind of cut without knowing which it is. */
export type CutSummary = {
  readonly kind: CutKind;
  readonly meaning: string;
  /** Its own fields, beside those of every cut. */
  readonly fields: FieldSpecs;
  /** A groove is cut on both sides of the axis, an edge on one. */
  readonly sides: 1 | 2;
  readonly needs: Need | undefined;
};

export const CUTS: readonly CutSummary[] = Object.values(DEFINITIONS);

const BY_KIND: DefinitionByKind = DEFINITIONS;

/**
 * What there is to know of a kind of cut, its fields as data.
 * @example
 * cutSummary("groove").sides // → 2
 */
export function cutSummary<Kind extends CutKind>(kind: Kind): CutSummary & { fields: FieldsByKind[Kind] } {
  return BY_KIND[kind];
}

/** What this kind of cut says of its setting. Throws a DomainError if the bit cannot make it or be set so. */
export function baseSetup<Kind extends CutKind>(
  bit: Bit,
  outline: Outline,
  cut: Cut<Kind>,
  setIn: SetIn | undefined,
): BaseSetup {
  const { needs, setup } = BY_KIND[cut.kind];
  if (needs?.isMetBy(bit, outline) === false) {
    const values = { needs: needs.code, forms: formsThatSuit(cut.kind) };
    throw new DomainError([{ pointer: "/kind", code: "cut-does-not-suit-bit", values }]);
  }
  return setup(bit, outline, cut, setIn);
}
