import type { Fault } from "../../quantity/fault.ts";
import type { Outline } from "../outline.ts";
import { beading } from "./beading.ts";
import { bullnose } from "./bullnose.ts";
import { chamfer } from "./chamfer.ts";
import { cope } from "./cope.ts";
import { coreBox } from "./core-box.ts";
import { cove } from "./cove.ts";
import { custom } from "./custom.ts";
import type { DimensionSpecs, DimensionsOf, FormDefinition, SearchedBy } from "./define.ts";
import { dovetail } from "./dovetail.ts";
import { drawerJoint } from "./drawer-joint.ts";
import { fingerJoint } from "./finger-joint.ts";
import { flushTrim } from "./flush-trim.ts";
import { groove } from "./groove.ts";
import { keyhole } from "./keyhole.ts";
import { lockMitre } from "./lock-mitre.ts";
import { ogee } from "./ogee.ts";
import { panelRaising } from "./panel-raising.ts";
import { panelRaisingVertical } from "./panel-raising-vertical.ts";
import { rabbet } from "./rabbet.ts";
import type { Sizes } from "./read-wall.ts";
import { roundOver } from "./round-over.ts";
import { slotCutter } from "./slot-cutter.ts";
import { spiralCompression } from "./spiral-compression.ts";
import { spiralDownCut } from "./spiral-down-cut.ts";
import { spiralUpCut } from "./spiral-up-cut.ts";
import { stick } from "./stick.ts";
import { straight } from "./straight.ts";
import { surfacing } from "./surfacing.ts";
import { tSlot } from "./t-slot.ts";
import { thumbnail } from "./thumbnail.ts";
import { tongue } from "./tongue.ts";
import type { CutKind, UsualCut } from "./usual-cut.ts";
import { vGroove } from "./v-groove.ts";

/** Every form, one line each. Adding a form is its file and a line here. */
const DEFINITIONS = {
  straight,
  "spiral-up-cut": spiralUpCut,
  "spiral-down-cut": spiralDownCut,
  "spiral-compression": spiralCompression,
  "flush-trim": flushTrim,
  rabbet,
  "slot-cutter": slotCutter,
  chamfer,
  "v-groove": vGroove,
  "round-over": roundOver,
  beading,
  cove,
  "core-box": coreBox,
  bullnose,
  ogee,
  thumbnail,
  dovetail,
  keyhole,
  "t-slot": tSlot,
  tongue,
  groove,
  cope,
  stick,
  "lock-mitre": lockMitre,
  "drawer-joint": drawerJoint,
  "finger-joint": fingerJoint,
  "panel-raising": panelRaising,
  "panel-raising-vertical": panelRaisingVertical,
  surfacing,
  custom,
};

type SpecsByKind = { [Kind in keyof typeof DEFINITIONS]: (typeof DEFINITIONS)[Kind]["dimensions"] };
type DefinitionByKind = { [Kind in FormKind]: FormDefinition<Kind, SpecsByKind[Kind]> };
type FormByKind = { [Kind in FormKind]: { readonly kind: Kind } & DimensionsOf<SpecsByKind[Kind]> };

export type FormKind = keyof typeof DEFINITIONS;

/** A bit's form with its dimensions: a union discriminated by `kind`. */
export type Form<Kind extends FormKind = FormKind> = FormByKind[Kind];

/** What the rest of the program may know of a form without knowing which it is. */
export type FormSummary = {
  readonly kind: FormKind;
  readonly title: string;
  readonly meaning: string;
  /** What else the trade calls it and its work. */
  readonly alsoCalled: readonly string[];
  /** The kinds of cut it is made for, the main one first. */
  readonly suits: readonly CutKind[];
  readonly dimensions: DimensionSpecs;
  /** How the work is fed past it: lying on a face, or standing on edge. */
  readonly work: "lying" | "standing";
  /** Whether it takes a table whatever it weighs. */
  readonly isForTableOnly?: boolean;
  /** Whether it cuts at its tip, so that it may be plunged. */
  readonly plunges: "always" | "some" | "never";
  /** Share of the ring between hub and rim that is metal. */
  readonly wingFillRatio: number;
};

export const FORMS: readonly FormSummary[] = Object.values(DEFINITIONS);

const BY_KIND: DefinitionByKind = DEFINITIONS;

/**
 * The outline of a form that `formFaults` found nothing wrong with: radius against distance from the tip, both mm, as straight
 * and circular segments.
 * @example
 * formOutline({ kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 }) // → [{ kind: "line", fromMm: 0, toMm: 25.4, startRadiusMm: 6.35, endRadiusMm: 6.35 }]
 */
export function formOutline<Kind extends FormKind>(form: Form<Kind>): Outline {
  return BY_KIND[form.kind].outline(form);
}

/**
 * Radius in mm of the form's pilot bearing; undefined without one. For a form that `formFaults` found nothing wrong with.
 * @example
 * formPilotRadiusMm({ kind: "cove", diameterMm: 38.1, radiusMm: 12.7 }) // → 6.35
 */
export function formPilotRadiusMm<Kind extends FormKind>(form: Form<Kind>): number | undefined {
  return BY_KIND[form.kind].pilotRadiusMm(form);
}

/** Where the middle of the stock belongs along the bit, mm from its tip; undefined for forms that are set by one of their faces. */
export function formMiddleMm<Kind extends FormKind>(form: Form<Kind>): number | undefined {
  return BY_KIND[form.kind].middleMm?.(form);
}

/** The cut a bit of this form is planned with if nobody says which. */
export function formUsualCut<Kind extends FormKind>(form: Form<Kind>): UsualCut {
  return BY_KIND[form.kind].usualCut(form, formOutline(form));
}

/** Sizes besides diameter, shank and length that a person asks for it by. */
export function formSearchedBy<Kind extends FormKind>(form: Form<Kind>): SearchedBy {
  return BY_KIND[form.kind].searchedBy(form);
}

/** The forms made for a kind of cut, those for which it is the main one first. */
export function formsThatSuit(cut: CutKind): FormKind[] {
  return FORMS.filter(({ suits }) => suits.includes(cut))
    .sort((one, other) => one.suits.indexOf(cut) - other.suits.indexOf(cut))
    .map(({ kind }) => kind);
}

/** Forms that may make a wall at once, in these sizes; each must be tried. */
export function formsFor(wall: Outline, sizes: Sizes): Form[] {
  return Object.values(DEFINITIONS).flatMap((definition): readonly Form[] =>
    "formsFor" in definition ? definition.formsFor(wall, sizes) : [],
  );
}

/** Share of the ring between hub and rim that is metal. */
export function formWingFillRatio(form: Form): number {
  return BY_KIND[form.kind].wingFillRatio;
}

/** Everything wrong with how the form's dimensions fit each other. */
export function formFitFaults<Kind extends FormKind>(form: Form<Kind>): Fault[] {
  return BY_KIND[form.kind].faults(form);
}

/** The form's specification: its dimensions as data. */
export function formSummary(kind: FormKind): FormSummary {
  return BY_KIND[kind];
}
