import { definePrecaution } from "./define.ts";

/** Narrower than this, no push block keeps hands away, mm: about 2 in. Wider than that, feather boards hold it. Ours. */
const NARROW_MM = 50;

/** A narrow strip is cut on a wide board and ripped off after, if no sled holds it. Source: common practice. */
export const narrowStock = definePrecaution({
  code: "narrow-stock",
  applies: ({ guide, cut: { work, edges } }) => {
    if (guide === "sled") return undefined;
    const widthMm = work?.widthMm;
    if (widthMm === undefined || widthMm >= NARROW_MM) return undefined;
    return edges.some(({ grain }) => grain === "long") ? { widthMm, narrowMm: NARROW_MM } : undefined;
  },
});
