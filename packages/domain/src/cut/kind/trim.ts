import { formPilotRadiusMm } from "../../bit/form/registry.ts";
import type { Outline } from "../../bit/outline.ts";
import { edgeRadiusMm } from "../../bit/solid.ts";
import { DomainError } from "../../quantity/fault.ts";
import { lengthMm } from "../../quantity/field.ts";
import type { BaseSetup, SetupAssumption, TemplateSetup } from "../base-setup.ts";
import { defineCut } from "./define.ts";
import {
  ASSUMED_TEMPLATE_THICKNESS_MM,
  ASSUMED_THICKNESS_MM,
  alongEdge,
  templateThicknessMm,
  workThicknessMm,
} from "./work-fields.ts";

/** A bearing is as wide as its bit within this, mm: both are measured. */
const FLUSH_MM = 0.1;

/** The edges reach this far past the face that work and template share, or they leave a ridge, mm. Ours. */
const OVERLAP_MM = 1;

/** Made in one run: the bearing decides where it ends. */
export const trim = defineCut({
  kind: "trim",
  meaning: "Trims an overhang flush with a template.",
  fields: {
    ...alongEdge,
    overhangMm: lengthMm("What stands out past the template.", 0.1, 30),
    thicknessMm: workThicknessMm,
    templateThicknessMm,
  },
  sides: 1,
  needs: {
    code: "flush-bearing",
    isMetBy: ({ form }, outline) => {
      const pilotRadiusMm = formPilotRadiusMm(form);
      return pilotRadiusMm !== undefined && Math.abs(pilotRadiusMm - edgeRadiusMm(outline)) <= FLUSH_MM;
    },
  },
  setup: (_, outline, cut) => {
    const rimMm = edgeRadiusMm(outline);
    const thicknessMm = cut.thicknessMm ?? ASSUMED_THICKNESS_MM;
    const edge = outline.find(({ role }) => role === "edge");
    const cuttingMm = edge === undefined ? 0 : edge.toMm - edge.fromMm;
    if (thicknessMm > cuttingMm) {
      const values = { given: thicknessMm, max: cuttingMm };
      throw new DomainError([{ pointer: "/thicknessMm", code: "setting-out-of-reach", values }]);
    }
    if (cut.overhangMm > rimMm) {
      const values = { given: cut.overhangMm, max: rimMm };
      throw new DomainError([{ pointer: "/overhangMm", code: "cut-too-wide", values }]);
    }
    const assumed: SetupAssumption[] = [];
    if (cut.thicknessMm === undefined) assumed.push({ code: "thickness-assumed", thicknessMm });
    const template = templateFor(outline, cut.templateThicknessMm);
    if (cut.templateThicknessMm === undefined) {
      assumed.push({ code: "template-assumed", thicknessMm: template.thicknessMm });
    }
    return {
      approach: "once",
      ...heights(template, thicknessMm, cuttingMm),
      template,
      fenceMm: rimMm - cut.overhangMm,
      thicknessMm,
      rows: 1,
      waste: undefined,
      assumed,
      reach: { pointer: "/thicknessMm", zeroMm: 0 },
    };
  },
});

/** A bit with a bearing at each end runs on the one at its tip: less of it stands out. */
function templateFor(outline: Outline, givenMm: number | undefined): TemplateSetup {
  const pilot = outline.find(({ role }) => role === "pilot");
  const bearingHeightMm = pilot === undefined ? 0 : pilot.toMm - pilot.fromMm;
  return {
    bearing: pilot?.fromMm === 0 ? "tip" : "shank",
    thicknessMm: givenMm ?? Math.max(ASSUMED_TEMPLATE_THICKNESS_MM, bearingHeightMm),
    bearingHeightMm,
  };
}

/**
 * The whole bearing on the template, and the edges past the face it shares with the work. A shank bearing runs on a template between the
 * work and the table or base, and never behind that plane; a tip bearing on one at the far face, and never past it. Source: common practice.
 */
function heights(
  { bearing, thicknessMm: templateMm, bearingHeightMm }: TemplateSetup,
  workMm: number,
  cuttingMm: number,
): Pick<BaseSetup, "heightMm" | "underlayMm"> {
  const spareMm = Math.min(templateMm - bearingHeightMm, cuttingMm - workMm);
  const overlapMm = Math.max(0, Math.min(OVERLAP_MM, spareMm));
  return bearing === "tip"
    ? { heightMm: bearingHeightMm + workMm + overlapMm }
    : { heightMm: cuttingMm - overlapMm, underlayMm: templateMm };
}
