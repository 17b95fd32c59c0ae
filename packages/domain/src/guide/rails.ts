import { defineGuide } from "./define.ts";

/** The router on a carriage over rails, for a surface. Source: common practice. */
export const rails = defineGuide({
  name: "rails",
  isSet: false,
  runsOnWork: false,
  serves: ({ cut, mounting }) => cut.kind === "surface" && mounting === "handheld",
  direction: () => "router-rows-away",
  steps: () => [{ code: "lay-rails" }],
  says: () => ["work-cannot-rock"],
});
