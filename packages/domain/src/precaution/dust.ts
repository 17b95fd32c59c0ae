import { type Dust, dustOf } from "../wood/dust.ts";
import { definePrecaution } from "./define.ts";

/** What the dust of this wood does, beyond what eyes and lungs are always kept from. Source: common practice. */
export const dust = definePrecaution<"dust", { readonly dust: Dust; readonly wood: string }>({
  code: "dust",
  applies: ({ wood }) => {
    const found = dustOf(wood);
    return found && { dust: found, wood: wood.name };
  },
});
