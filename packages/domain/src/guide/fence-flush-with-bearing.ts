import { defineGuide, isClosedToFences } from "./define.ts";

/** A bearing that runs on the work, and the table's fence flush with it, for a straight edge. Source: common practice. */
export const fenceFlushWithBearing = defineGuide({
  name: "fence-flush-with-bearing",
  isSet: true,
  runsOnWork: true,
  serves: (context) =>
    context.mounting === "table" && context.pilotRadiusMm !== undefined && !isClosedToFences(context),
});
