import { defineGuide } from "./define.ts";

/** A bearing that runs on a template, for a cut that trims to one. Source: common practice. */
export const template = defineGuide({
  name: "template",
  fence: "none",
  serves: ({ cut }) => cut.kind === "trim",
});
