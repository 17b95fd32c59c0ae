import { definePrecaution } from "./define.ts";

/** Nothing is changed or adjusted on a router that can start. Source: common practice. */
export const unplugFirst = definePrecaution({
  code: "unplug-first",
  applies: () => ({}),
});
