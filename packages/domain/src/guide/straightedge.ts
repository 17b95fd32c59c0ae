import { defineGuide } from "./define.ts";

/** A straightedge clamped to the work, for a groove by hand. Source: common practice. */
export const straightedge = defineGuide({
  name: "straightedge",
  isSet: false,
  runsOnWork: false,
  serves: ({ cut, mounting }) => cut.kind === "groove" && mounting === "handheld",
});
