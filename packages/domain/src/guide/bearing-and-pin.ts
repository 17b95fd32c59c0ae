import { isInside } from "../cut/course.ts";
import { defineGuide, isClosedToFences, isOnBearing } from "./define.ts";

/** A bearing that runs on the work, which starts against a pin: what a table has for a curved edge. Source: common practice. */
export const bearingAndPin = defineGuide({
  name: "bearing-and-pin",
  isSet: false,
  runsOnWork: true,
  serves: (context) => context.mounting === "table" && context.cut.kind !== "trim" && isOnBearing(context),
  waitsToBeNamed: (context) => !isClosedToFences(context),
  direction: ({ cut }) => (isInside(cut) ? "work-around-opening" : "work-around-pin"),
  steps: () => [{ code: "fix-pin" }],
  says: () => ["starting-pin"],
});
