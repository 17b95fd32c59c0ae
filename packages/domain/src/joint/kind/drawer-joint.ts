import { defineJoint, formOf } from "./define.ts";
import { settingsAbout, turnsAtMm } from "./with-itself.ts";

/** One part face down and one face up at one height, the step of the bit at the middle of the stock. Source: common practice. */
export const drawerJoint = defineJoint({
  kind: "drawer-joint",
  meaning: "Two hooks that interlock, cut with one bit at one height.",
  halves: [
    { name: "face-down", forms: ["drawer-joint"], cut: "joint" },
    { name: "face-up", forms: ["drawer-joint"], cut: "joint" },
  ],
  isTurnedOver: true,
  closes: "pushed",
  isCorner: false,
  meetAtMm: (halves) => turnsAtMm(halves, (bit) => formOf(bit, 0, ["drawer-joint"]).stepHeightMm),
  settings: ([bit], { thicknessMm }) => {
    const { cuttingLengthMm, stepHeightMm, stepMm, diameterMm } = formOf(bit, 0, ["drawer-joint"]);
    const cutsMm = Math.min(stepHeightMm, cuttingLengthMm - stepHeightMm);
    return settingsAbout({ alongMm: stepHeightMm, cutsMm }, thicknessMm, diameterMm / 2 - stepMm);
  },
  meetsBy: "side",
  goesInMm: undefined,
  touchesThroughout: true,
  fitBy: "bits",
});
