import type { Bit } from "../../bit/bit.ts";
import { formOutline } from "../../bit/form/registry.ts";
import { radiusOnSegmentMm } from "../../bit/outline.ts";
import { DomainError } from "../../quantity/fault.ts";
import { acrossMm } from "../half.ts";
import { defineJoint, formOf } from "./define.ts";

/** A dovetailed groove is this share of its board's thickness deep if nobody says: a third. Source: common practice. */
const USUAL_DEPTH_SHARE = 1 / 3;

/** The tail stands on its end and is cut from both faces at the groove's height, the fit by the fence. Source: common practice. */
export const slidingDovetail = defineJoint({
  kind: "sliding-dovetail",
  meaning: "A tail on a board's end that slides along a dovetailed groove.",
  halves: [
    { name: "groove", forms: ["dovetail"], cut: "groove" },
    { name: "tail", forms: ["dovetail"], cut: "joint" },
  ],
  isTurnedOver: true,
  closes: "slid",
  isCorner: false,
  // The tail's shoulders lie on the grooved face.
  meetAtMm: ([, tail]) => [0, tail.setting.heightMm],
  settings: ([groove, tail], asked) => {
    const { thicknessMm, otherThicknessMm: tailMm = thicknessMm, clearanceMm = 0 } = asked;
    const { cuttingLengthMm } = formOf(groove, 0, ["dovetail"]);
    formOf(tail, 1, ["dovetail"]);
    const heightMm = asked.depthMm ?? Math.min(cuttingLengthMm, thicknessMm * USUAL_DEPTH_SHARE);
    // At the mouth the groove is as wide as the bit there; the tail's waist is cut by the tip.
    const fenceMm = radiusMm(groove, heightMm) + radiusMm(tail, 0) - (tailMm + clearanceMm) / 2;
    if (fenceMm < 0) {
      const values = { given: tailMm, max: tailMm + 2 * fenceMm };
      throw new DomainError([{ pointer: "/otherThicknessMm", code: "setting-out-of-reach", values }]);
    }
    return [
      { heightMm, fenceMm: 0, thicknessMm },
      { heightMm, fenceMm, thicknessMm: heightMm },
    ];
  },
  meetsBy: "side",
  goesInMm: ([groove, tail]) => {
    const waistMm = acrossMm(tail) - 2 * (radiusMm(tail.bit, 0) - tail.setting.fenceMm);
    return [2 * radiusMm(groove.bit, groove.setting.heightMm), waistMm];
  },
  touchesThroughout: true,
  fitBy: "fence",
});

function radiusMm({ form }: Bit, fromTipMm: number): number {
  const [segment] = formOutline(form);
  return segment === undefined ? 0 : radiusOnSegmentMm(segment, fromTipMm);
}
