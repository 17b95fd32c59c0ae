import { defineGuide } from "./define.ts";

/** A bearing that runs on a template, for a cut that trims to one. Source: common practice. */
export const template = defineGuide({
  name: "template",
  isSet: false,
  runsOnWork: false,
  serves: ({ cut }) => cut.kind === "trim",
});
