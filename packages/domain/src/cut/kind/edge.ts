import { defineCut } from "./define.ts";
import { profileFields, profileSetup } from "./profile.ts";

export const edge = defineCut({
  kind: "edge",
  meaning: "A profile along an edge.",
  fields: profileFields,
  sides: 1,
  needs: undefined,
  setup: (bit, outline, cut) => profileSetup(bit, outline, cut),
});
