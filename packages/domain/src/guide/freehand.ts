import { defineGuide } from "./define.ts";

/** The hands alone. It can be named, and never serves: lettering and carving take a template or a guide. Source: common practice. */
export const freehand = defineGuide({
  name: "freehand",
  isSet: false,
  runsOnWork: false,
  serves: () => false,
  direction: () => "router-left-to-right",
  says: () => [],
});
