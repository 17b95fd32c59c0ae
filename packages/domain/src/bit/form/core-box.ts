import { lengthMm } from "../../quantity/field.ts";
import { arc, line } from "../outline.ts";
import { defineForm } from "./define.ts";
import { soldLengthMm, stretchesOf } from "./read-wall.ts";
import { wholeGroove } from "./usual-cut.ts";

export const coreBox = defineForm({
  kind: "core-box",
  title: "Core-box",
  meaning: "A half-round nose: grooves and flutes with a round bottom.",
  alsoCalled: ["round nose", "roundnose", "ball nosed", "fluting", "cove"],
  suits: ["groove", "edge"],
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
  usualCut: (_, outline) => wholeGroove(outline),
  searchedBy: ({ diameterMm }) => ({ radiusMm: diameterMm / 2 }),
  formsFor: (wall, sizes) => {
    const [nose, ...others] = stretchesOf(wall);
    if (nose?.kind !== "hollow" || others.some(({ kind }) => kind !== "level")) return [];
    const diameterMm = sizes.lengthMm(2 * nose.arcRadiusMm);
    const straightMm = others.reduce((sum, { lengthMm: mm }) => sum + mm, 0);
    return [{ kind: "core-box", diameterMm, cuttingLengthMm: soldLengthMm(diameterMm / 2 + straightMm) }];
  },
  work: "lying",
  plunges: "some",
  wingFillRatio: 0.5,
});
