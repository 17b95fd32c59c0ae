import { defineGuide, isClosedToFences } from "./define.ts";
import { removesWholeEdge } from "./whole-edge.ts";

/** A straightedge clamped to the work, by hand: for a groove, and for an edge that nothing is left of to ride on. Source: common practice. */
export const straightedge = defineGuide({
  name: "straightedge",
  isSet: false,
  runsOnWork: false,
  serves: (context) => {
    const { cut, mounting, pilotRadiusMm } = context;
    if (mounting !== "handheld" || pilotRadiusMm !== undefined || isClosedToFences(context)) return false;
    return cut.kind === "groove" || cut.kind === "rabbet" || cut.kind === "edge";
  },
  waitsToBeNamed: (context) => context.cut.kind !== "groove" && !removesWholeEdge(context),
  direction: ({ setup }) =>
    setup.sides === 2 ? "router-left-to-right-straightedge-beyond" : "router-left-to-right",
  steps: ({ setup }) => [{ code: "clamp-straightedge", inRuns: setup.runs !== undefined }],
  says: () => ["straightedge-on-left"],
});
