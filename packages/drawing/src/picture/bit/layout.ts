import { type Bit, bitSolid, formPilotRadiusMm, type Outline, outlineLengthMm } from "@rimwise/domain";
import { MEASURE_ROW_MM } from "../../drafting/measure.ts";
import type { Standing } from "../../drafting/outline-path.ts";
import { MARGIN_MM, PAGE_WIDTH_MM } from "../../drafting/page.ts";
import { scaleFor } from "../../drafting/scale.ts";
import type { Frame } from "../../scene/frame.ts";

/** A bit on its page: x of the frame is the distance from the axis, y the distance from the tip. */
export type BitLayout = {
  readonly frame: Frame;
  readonly scale: number;
  readonly rimRadiusMm: number;
  readonly shankRadiusMm: number;
  readonly headMm: number;
  /** How much of the shank is drawn before it is broken off. */
  readonly shankShownMm: number;
  /** Where the dimension lines beside it lie, and the first one above it. */
  readonly leftLineMm: number;
  readonly rightLineMm: number;
  readonly aboveLineMm: number;
};

/** A bit stands on its shank, the tip up. */
export const ON_ITS_SHANK: Standing = { axisMm: 0, tipMm: 0, shankToward: 1 };

/** The room for a drawn bit between the dimensions beside it, mm. */
const BESIDE_MM = 23;
const MOST_HEIGHT_MM = 66;

/** Shank shown in the world, mm: a length that nobody gave is not to be measured on the drawing. */
const SHANK_SHOWN_MM = 18;

/** The bit under `topMm`, as large as a scale of the drawing board allows. */
export function bitLayout(bit: Bit, outline: Outline, topMm: number): BitLayout {
  const { rimRadiusMm } = bitSolid(bit);
  const headMm = outlineLengthMm(outline);
  const widestMm = 2 * Math.max(rimRadiusMm, bit.shankDiameterMm / 2);
  const scale = scaleFor(
    { widthMm: widestMm, heightMm: headMm + SHANK_SHOWN_MM },
    { widthMm: PAGE_WIDTH_MM - 2 * (MARGIN_MM + BESIDE_MM), heightMm: MOST_HEIGHT_MM },
  );
  const rows = hasPilotAtTip(bit, outline) ? 2 : 1;
  const halfMm = (scale * widestMm) / 2;
  const axisMm = PAGE_WIDTH_MM / 2;
  return {
    frame: {
      originXMm: axisMm,
      originYMm: topMm + rows * MEASURE_ROW_MM + 2,
      scaleX: scale,
      scaleY: scale,
    },
    scale,
    rimRadiusMm,
    shankRadiusMm: bit.shankDiameterMm / 2,
    headMm,
    shankShownMm: SHANK_SHOWN_MM,
    leftLineMm: axisMm - halfMm - 4,
    rightLineMm: axisMm + halfMm + 4,
    aboveLineMm: topMm + MEASURE_ROW_MM,
  };
}

/** Whether a bearing narrower or wider than the edges sits on the tip. */
export function hasPilotAtTip({ form }: Bit, outline: Outline): boolean {
  return formPilotRadiusMm(form) !== undefined && outline[0]?.role === "pilot";
}
