import { definePrecaution } from "./define.ts";

/** Every part of a joint or a frame is set out from one face. Source: common practice. */
export const sameFaceDown = definePrecaution({
  code: "same-face-down",
  applies: ({ cut: { kind, work } }) => {
    const count = work?.count ?? 1;
    const isSetOut = kind === "joint" || kind === "panel" || count > 1 || work?.faceDown !== undefined;
    return isSetOut ? { face: work?.faceDown } : undefined;
  },
});
