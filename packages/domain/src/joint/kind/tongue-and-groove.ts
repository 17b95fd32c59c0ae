import { formMiddleMm } from "../../bit/form/registry.ts";
import { defineJoint, fenceForReachMm, formOf, mustBeThick } from "./define.ts";
import { GROOVERS, slotDepthMm, slotSetting, slotWidthMm } from "./slot.ts";

/** Both at the middle of the stock. Source: common practice. */
export const tongueAndGroove = defineJoint({
  kind: "tongue-and-groove",
  meaning: "A tongue along one edge in a groove along another.",
  halves: [
    { name: "groove", forms: GROOVERS, cut: "edge" },
    { name: "tongue", forms: ["tongue"], cut: "joint" },
  ],
  isTurnedOver: false,
  closes: "pushed",
  isCorner: false,
  meetAtMm: ([groove, tongue]) => [
    groove.setting.heightMm - (formMiddleMm(groove.bit.form) ?? 0),
    tongue.setting.heightMm - (formMiddleMm(tongue.bit.form) ?? 0),
  ],
  settings: ([groove, tongue], { thicknessMm, depthMm }) => {
    const { cuttingLengthMm, tongueLengthMm } = formOf(tongue, 1, ["tongue"]);
    mustBeThick(thicknessMm, { max: cuttingLengthMm });
    const slotMm = slotDepthMm(groove, depthMm ?? tongueLengthMm);
    return [
      slotSetting(groove, thicknessMm / 2, thicknessMm, slotMm),
      {
        heightMm: thicknessMm / 2 + cuttingLengthMm / 2,
        fenceMm: fenceForReachMm(tongue, tongueLengthMm),
        thicknessMm,
      },
    ];
  },
  meetsBy: "middle",
  goesInMm: ([groove, tongue]) => [
    slotWidthMm(groove.bit),
    formOf(tongue.bit, 1, ["tongue"]).tongueThicknessMm,
  ],
  touchesThroughout: true,
  fitBy: "bits",
});
