import { formSummary } from "../bit/form/registry.ts";
import { definePrecaution } from "./define.ts";

/** Narrower than this, work lifts or leans away from the fence, mm: about 4 in. Ours. */
const NARROW_MM = 100;

/** Narrow or tall work along a fence is held by feather boards, not by hands. Source: common practice. */
export const featherBoards = definePrecaution({
  code: "feather-boards",
  applies: ({ guide, bit, cut: { work } }) => {
    const isAlongFence =
      guide === "fence" || guide === "fence-flush-with-bearing" || guide === "fence-with-offset-outfeed";
    const isTall = formSummary(bit.form.kind).work === "standing";
    const isNarrow = work?.widthMm !== undefined && work.widthMm < NARROW_MM;
    return isAlongFence && (isTall || isNarrow) ? {} : undefined;
  },
});
