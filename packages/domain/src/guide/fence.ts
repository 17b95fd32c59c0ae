import { defineGuide, isClosedToFences } from "./define.ts";

/** The fence of a table, for a straight edge with a bit without a bearing, and for a groove along it. Source: common practice. */
export const fence = defineGuide({
  name: "fence",
  isSet: true,
  runsOnWork: false,
  serves: (context) => {
    const { mounting, setup, pilotRadiusMm } = context;
    if (mounting !== "table" || isClosedToFences(context)) return false;
    return pilotRadiusMm === undefined || setup.fenceMm > pilotRadiusMm || setup.approach === "fence";
  },
});
