import { definePrecaution } from "./define.ts";

/** A variable router starts slow, clear of the work. Source: common practice. */
export const startSlow = definePrecaution({
  code: "start-slow",
  applies: ({ router }) => (router.dial === undefined ? undefined : {}),
});
