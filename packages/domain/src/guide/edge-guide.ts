import { defineGuide, isClosedToFences } from "./define.ts";
import { removesWholeEdge } from "./whole-edge.ts";

/** A guide on the router's base that rides on a straight edge of the work, by hand. Source: common practice. */
export const edgeGuide = defineGuide({
  name: "edge-guide",
  isSet: true,
  runsOnWork: false,
  serves: (context) => {
    const { mounting, cut } = context;
    if (mounting !== "handheld" || cut.kind === "surface" || cut.kind === "trim") return false;
    return !isClosedToFences(context) && !removesWholeEdge(context);
  },
  waitsToBeNamed: ({ cut }) => cut.kind === "groove",
  direction: ({ setup }) =>
    setup.sides === 2 ? "router-left-to-right-guided-edge-near" : "router-left-to-right",
  says: ({ setup }) =>
    setup.sides === 2 ? ["guided-edge-on-right", "support-both-ends"] : ["support-both-ends"],
});
