import { arc, line } from "../outline.ts";
import { defineForm, lengthMm } from "./define.ts";

export const coreBox = defineForm({
  kind: "core-box",
  title: "Core-box",
  meaning: "A half-round nose: grooves and flutes with a round bottom.",
  dimensions: {
    diameterMm: lengthMm("Cutting diameter, twice the radius of the nose.", 2, 60),
    cuttingLengthMm: lengthMm(
      "Length of the cutting edges from the tip; at least the radius of the nose.",
      1,
      100,
    ),
  },
  faults: ({ diameterMm, cuttingLengthMm }) =>
    cuttingLengthMm >= diameterMm / 2
      ? []
      : [
          {
            pointer: "/cuttingLengthMm",
            code: "out-of-range",
            values: { given: cuttingLengthMm, min: diameterMm / 2, max: 100 },
          },
        ],
  outline: ({ diameterMm, cuttingLengthMm }) => {
    const noseRadiusMm = diameterMm / 2;
    const nose = arc(0, noseRadiusMm, {
      centreMm: noseRadiusMm,
      centreRadiusMm: 0,
      arcRadiusMm: noseRadiusMm,
      side: 1,
    });
    return cuttingLengthMm > noseRadiusMm
      ? [nose, line(noseRadiusMm, cuttingLengthMm, noseRadiusMm)]
      : [nose];
  },
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.5,
});
