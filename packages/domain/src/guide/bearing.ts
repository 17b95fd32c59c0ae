import { defineGuide, handheldDirection, isOnBearing } from "./define.ts";

/** A bearing that runs on the work, by hand. Source: common practice. */
export const bearing = defineGuide({
  name: "bearing",
  isSet: false,
  runsOnWork: true,
  serves: (context) => context.mounting === "handheld" && context.cut.kind !== "trim" && isOnBearing(context),
  direction: handheldDirection,
  says: () => [],
});
