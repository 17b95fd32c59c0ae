import { formSummary } from "../../bit/form/registry.ts";
import { defineCut } from "./define.ts";
import { profileFields, profileSetup } from "./profile.ts";

export const panel = defineCut({
  kind: "panel",
  meaning: "A raised field: an edge cut around all the edges of a panel.",
  fields: profileFields,
  sides: 1,
  needs: {
    code: "panel-raising-form",
    isMetBy: ({ form }) => formSummary(form.kind).suits.includes("panel"),
  },
  setup: (bit, outline, cut) => profileSetup(bit, outline, cut),
});
