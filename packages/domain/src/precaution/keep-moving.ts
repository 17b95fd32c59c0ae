import { burnsEasily } from "../wood/burning.ts";
import { definePrecaution } from "./define.ts";

/** A bit that dwells burns, first at its slowest point; some woods show it at once. Source: common practice. */
export const keepMoving = definePrecaution<"keep-moving", { readonly burns: boolean }>({
  code: "keep-moving",
  applies: ({ wood }) => ({ burns: burnsEasily(wood) }),
});
