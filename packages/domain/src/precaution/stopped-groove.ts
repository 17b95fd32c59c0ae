import { definePrecaution } from "./define.ts";

/** A stopped groove starts and ends out of sight. Source: common practice. */
export const stoppedGroove = definePrecaution({
  code: "stopped-groove",
  applies: ({ mounting, cut }) => ("stopped" in cut && cut.stopped === true ? { mounting } : undefined),
});
