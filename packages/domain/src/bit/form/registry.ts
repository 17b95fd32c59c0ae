import type { Fault } from "../../quantity/fault.ts";
import type { Outline } from "../outline.ts";
import { beading } from "./beading.ts";
import { bullnose } from "./bullnose.ts";
import { chamfer } from "./chamfer.ts";
import { cope } from "./cope.ts";
import { coreBox } from "./core-box.ts";
import { cove } from "./cove.ts";
import { custom } from "./custom.ts";
import type { DimensionSpecs, DimensionsOf, FormDefinition } from "./define.ts";
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

/** A bit's form with its dimensions: a union told apart by `kind`. */
export type Form<Kind extends FormKind = FormKind> = FormByKind[Kind];

/** What the rest of the program may know of a form without knowing which it is. */
export type FormSummary = {
  readonly kind: FormKind;
  readonly title: string;
  readonly meaning: string;
  readonly dimensions: DimensionSpecs;
  /** Share of the ring between hub and rim that is metal. */
  readonly wingFillRatio: number;
};

export const FORMS: readonly FormSummary[] = Object.values(DEFINITIONS);

const BY_KIND: DefinitionByKind = DEFINITIONS;

/** The outline of a form that `formFaults` found nothing wrong with. */
export function formOutline<Kind extends FormKind>(form: Form<Kind>): Outline {
  return BY_KIND[form.kind].outline(form);
}

/** Radius in mm of the form's pilot bearing, or undefined without one. */
export function formPilotRadiusMm<Kind extends FormKind>(form: Form<Kind>): number | undefined {
  return BY_KIND[form.kind].pilotRadiusMm(form);
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
