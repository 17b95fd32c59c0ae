import { defineGuide, isClosedToFences } from "./define.ts";

/** A guide on the router's base that rides on a straight edge, by hand. Source: common practice. */
export const edgeGuide = defineGuide({
  name: "edge-guide",
  isSet: true,
  runsOnWork: false,
  serves: (context) => context.mounting === "handheld" && !isClosedToFences(context),
});
