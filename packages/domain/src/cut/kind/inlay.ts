import { isParallel } from "../../bit/shape.ts";
import { choice, lengthMm } from "../../quantity/field.ts";
import { BUSHING_RANGE_MM, bushingSetup } from "./bushing.ts";
import { defineCut } from "./define.ts";
import { depthMm, templateThicknessMm } from "./work-fields.ts";

/** Walked up to by height, as a groove in full wood: the bit is plunged and cuts on both sides. */
export const inlay = defineCut({
  kind: "inlay",
  meaning:
    "One part of an inlay, cut along one template with two bushings: the recess, or the plug that fills it; each edge is a stretch of its outline.",
  fields: {
    depthMm,
    part: choice("The recess, cleared inside its outline, or the plug, cut free around it.", [
      "recess",
      "plug",
    ]),
    bushingDiameterMm: lengthMm(
      "Outside diameter of the bushing that runs along the template for this part. The recess takes one that is larger by two diameters of the bit than the plug's.",
      BUSHING_RANGE_MM.min,
      BUSHING_RANGE_MM.max,
    ),
    templateThicknessMm,
  },
  sides: 2,
  needs: {
    code: "parallel-edges-without-pilot",
    isMetBy: (_, outline) => isParallel(outline) && outline.every(({ role }) => role === "edge"),
  },
  setup: (_, __, cut) => ({
    approach: "height",
    heightMm: cut.depthMm,
    fenceMm: 0,
    thicknessMm: cut.depthMm,
    rows: 1,
    waste: undefined,
    reach: { pointer: "/depthMm", zeroMm: 0 },
    ...bushingSetup(cut),
  }),
});
