import { definePrecaution } from "./define.ts";

/** A router that is not locked sinks, or climbs, while it cuts. Source: common practice. */
export const lockTheHeight = definePrecaution({
  code: "lock-the-height",
  applies: ({ mounting }) => ({ mounting }),
});
