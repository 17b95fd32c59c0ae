import { spansOpening } from "./contact.ts";
import { defineGuide, isClosedToFences } from "./define.ts";

/** A bearing that runs on the work, and the table's fence flush with it, for a straight edge. Source: common practice. */
export const fenceFlushWithBearing = defineGuide({
  name: "fence-flush-with-bearing",
  isSet: true,
  runsOnWork: true,
  serves: (context) =>
    context.mounting === "table" &&
    context.cut.kind !== "trim" &&
    context.pilotRadiusMm !== undefined &&
    !isClosedToFences(context) &&
    spansOpening(context),
  direction: () => "work-right-to-left",
  says: () => ["never-trap-the-work", "fence-and-pilot"],
});
