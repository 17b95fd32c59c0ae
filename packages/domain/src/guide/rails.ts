import { defineGuide } from "./define.ts";

/** The router on a carriage over rails, or the work on a sled, for a surface. Source: common practice. */
export const rails = defineGuide({
  name: "rails",
  isSet: false,
  runsOnWork: false,
  serves: ({ cut }) => cut.kind === "surface",
});
