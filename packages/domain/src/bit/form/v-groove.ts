import { angleDeg, lengthMm } from "../../quantity/field.ts";
import { line } from "../outline.ts";
import { defineForm } from "./define.ts";
import { slopeFaults } from "./fit.ts";
import { stretchesOf, widening } from "./read-wall.ts";
import { wholeGroove } from "./usual-cut.ts";

export const vGroove = defineForm({
  kind: "v-groove",
  title: "V-groove",
  meaning: "Edges that meet in a point: V-shaped grooves and lettering.",
  alsoCalled: ["vee", "point", "pointed", "lettering", "engraving", "veining"],
  suits: ["groove", "edge"],
  dimensions: {
    diameterMm: lengthMm("Largest cutting diameter.", 3, 80),
    angleDeg: angleDeg("Whole angle of the groove; 90 is square.", 10, 160),
  },
  faults: ({ diameterMm, angleDeg: wholeDeg }) =>
    slopeFaults("/angleDeg", wholeDeg, wholeDeg / 2, diameterMm / 2),
  outline: ({ diameterMm, angleDeg: wholeDeg }) => {
    const radiusMm = diameterMm / 2;
    return [line(0, radiusMm / Math.tan((wholeDeg * Math.PI) / 360), 0, radiusMm)];
  },
  pilotRadiusMm: () => undefined,
  usualCut: (_, outline) => wholeGroove(outline),
  searchedBy: ({ angleDeg: wholeDeg }) => ({ angleDeg: wholeDeg }),
  formsFor: (wall, sizes) => {
    const [slope, ...others] = stretchesOf(wall);
    const wide = slope && others.length === 0 ? widening(slope) : undefined;
    if (wide === undefined) return [];
    const diameterMm = sizes.lengthMm(2 * Math.ceil(wide.widthMm));
    return [{ kind: "v-groove", diameterMm, angleDeg: 2 * sizes.angleDeg(wide.angleDeg) }];
  },
  work: "lying",
  plunges: "always",
  wingFillRatio: 0.5,
});
