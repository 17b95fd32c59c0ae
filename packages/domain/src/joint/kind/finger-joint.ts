import type { Bit } from "../../bit/bit.ts";
import { defineJoint, formOf } from "./define.ts";
import { settingsAbout, turnsAtMm } from "./with-itself.ts";

/** One part face down and one face up at one height: a side of a finger at the middle of the stock, so that finger meets gap. Source: geometry. */
export const fingerJoint = defineJoint({
  kind: "finger-joint",
  meaning: "Fingers in gaps, both halves cut with one bit at one height.",
  halves: [
    { name: "face-down", forms: ["finger-joint"], cut: "joint" },
    { name: "face-up", forms: ["finger-joint"], cut: "joint" },
  ],
  isTurnedOver: true,
  closes: "pushed",
  isCorner: false,
  meetAtMm: (halves) => turnsAtMm(halves, besideMiddleMm),
  settings: ([bit], { thicknessMm }) => {
    const { diameterMm, fingerDepthMm } = formOf(bit, 0, ["finger-joint"]);
    const alongMm = besideMiddleMm(bit);
    return settingsAbout({ alongMm, cutsMm: alongMm }, thicknessMm, diameterMm / 2 - fingerDepthMm);
  },
  meetsBy: "side",
  goesInMm: undefined,
  touchesThroughout: true,
  fitBy: "bits",
});

/** The side of a finger that is nearest to the bit's middle, toward the tip: less of the bit stands out than with the other. */
function besideMiddleMm(bit: Bit): number {
  const { fingers, fingerHeightMm } = formOf(bit, 0, ["finger-joint"]);
  return (fingers - 1) * fingerHeightMm;
}
