import { formSummary } from "../../bit/form/registry.ts";
import { defineCut } from "./define.ts";
import { profileFields, profileSetup } from "./profile.ts";

export const joint = defineCut({
  kind: "joint",
  meaning:
    "One half of a joint along an edge: tongue, groove, cope, stick, lock-mitre, drawer or finger joint.",
  fields: profileFields,
  sides: 1,
  needs: {
    code: "joint-form",
    isMetBy: ({ form }) => formSummary(form.kind).suits.includes("joint"),
  },
  setup: profileSetup,
});
