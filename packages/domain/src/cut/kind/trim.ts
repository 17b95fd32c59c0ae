import { formPilotRadiusMm } from "../../bit/form/registry.ts";
import { outlineLengthMm } from "../../bit/outline.ts";
import { rimRadiusMm } from "../../bit/solid.ts";
import { DomainError } from "../../quantity/fault.ts";
import { lengthMm } from "../../quantity/field.ts";
import { defineCut } from "./define.ts";
import { ASSUMED_THICKNESS_MM, alongEdge, workThicknessMm } from "./work-fields.ts";

/** A bearing is as wide as its bit within this, mm: both are measured. */
const FLUSH_MM = 0.1;

/** Made in one run: the bearing decides where it ends. */
export const trim = defineCut({
  kind: "trim",
  meaning: "Trims an overhang flush with a template.",
  fields: {
    ...alongEdge,
    overhangMm: lengthMm("What stands out past the template.", 0.1, 30),
    thicknessMm: workThicknessMm,
  },
  sides: 1,
  needs: {
    code: "flush-bearing",
    isMetBy: ({ form }, outline) => {
      const pilotRadiusMm = formPilotRadiusMm(form);
      return pilotRadiusMm !== undefined && Math.abs(pilotRadiusMm - rimRadiusMm(outline)) <= FLUSH_MM;
    },
  },
  setup: (_, outline, cut) => {
    const rimMm = rimRadiusMm(outline);
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
    return {
      approach: "once",
      heightMm: edge?.toMm ?? outlineLengthMm(outline),
      fenceMm: rimMm - cut.overhangMm,
      thicknessMm,
      rows: 1,
      waste: undefined,
      assumed: cut.thicknessMm === undefined ? [{ code: "thickness-assumed", thicknessMm }] : [],
      reach: { pointer: "/thicknessMm", zeroMm: 0 },
    };
  },
});
