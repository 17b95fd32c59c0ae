import { lengthMm } from "../../quantity/field.ts";
import { defineForm } from "./define.ts";
import { parallelFaults, parallelOutline } from "./parallel.ts";
import { lightGroove } from "./usual-cut.ts";

export const surfacing = defineForm({
  kind: "surfacing",
  title: "Surfacing",
  meaning: "A wide flat cutter with short edges: planes slabs and beds in overlapping rows.",
  alsoCalled: ["planing", "flattening", "levelling", "leveling", "slab", "spoilboard"],
  suits: ["surface", "groove", "rabbet", "edge"],
  dimensions: {
    diameterMm: lengthMm("Cutting diameter.", 16, 100),
    cuttingLengthMm: lengthMm("Length of the cutting edges from the tip.", 2, 30),
  },
  faults: parallelFaults,
  outline: parallelOutline,
  pilotRadiusMm: () => undefined,
  usualCut: ({ diameterMm, cuttingLengthMm }) => lightGroove(diameterMm, cuttingLengthMm),
  searchedBy: () => ({}),
  work: "lying",
  plunges: "some",
  wingFillRatio: 0.45,
});
