import { formSummary } from "../bit/form/registry.ts";
import { definePrecaution } from "./define.ts";

/** Work on edge tips over a low fence. Source: common practice. */
export const tallFence = definePrecaution({
  code: "tall-fence",
  applies: ({ bit, mounting }) =>
    mounting === "table" && formSummary(bit.form.kind).work === "standing" ? {} : undefined,
});
