import type { Bit } from "../../bit/bit.ts";
import { formOutline, formPilotRadiusMm } from "../../bit/form/registry.ts";
import { edgesFromMm } from "../../bit/outline.ts";
import type { BitSetting } from "../../bit/section.ts";
import { rimRadiusMm } from "../../bit/solid.ts";
import type { JointHalf } from "../half.ts";
import { defineJoint, fenceForReachMm } from "./define.ts";

const PARALLEL = ["rabbet", "straight", "spiral-up-cut", "spiral-down-cut", "spiral-compression"] as const;

/** Two rabbets half the thickness deep and equally wide, one cut in the face and one in the back. Source: common practice. */
export const shiplap = defineJoint({
  kind: "shiplap",
  meaning: "Two rabbets that lap over each other.",
  halves: [
    { name: "face-down", forms: PARALLEL, cut: "rabbet" },
    { name: "face-up", forms: PARALLEL, cut: "rabbet" },
  ],
  isTurnedOver: true,
  closes: "pushed",
  isCorner: false,
  meetAtMm: ([one, other]) => [stepMm(one), stepMm(other)],
  settings: ([one, other], { thicknessMm, depthMm }) => {
    const widthMm = depthMm ?? Math.min(...[one, other].map((bit) => usualLapMm(bit, thicknessMm)));
    return [rabbetSetting(one, thicknessMm, widthMm), rabbetSetting(other, thicknessMm, widthMm)];
  },
  meetsBy: "side",
  goesInMm: undefined,
  touchesThroughout: true,
  fitBy: "bits",
});

/** Height of the step above the face that lies on the table. */
function stepMm({ bit, setting }: JointHalf): number {
  return setting.heightMm - edgesFromMm(formOutline(bit.form));
}

function rabbetSetting(bit: Bit, thicknessMm: number, widthMm: number): BitSetting {
  const heightMm = edgesFromMm(formOutline(bit.form)) + thicknessMm / 2;
  return { heightMm, fenceMm: fenceForReachMm(bit, widthMm), thicknessMm };
}

/** As wide as half the stock is thick, or what a bearing gives. */
function usualLapMm(bit: Bit, thicknessMm: number): number {
  const pilotRadiusMm = formPilotRadiusMm(bit.form);
  const reachMm = rimRadiusMm(formOutline(bit.form)) - (pilotRadiusMm ?? 0);
  return pilotRadiusMm === undefined ? Math.min(reachMm, thicknessMm / 2) : reachMm;
}
