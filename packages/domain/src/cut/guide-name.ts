/** Every way to guide the work or the router, by name; `guide` says what each serves. A request may name one. */
export const GUIDE_NAMES = [
  "template-and-bushing",
  "template",
  "rails",
  "straightedge",
  "sled",
  "fence-with-offset-outfeed",
  "fence",
  "fence-flush-with-bearing",
  "bearing",
  "bearing-and-pin",
  "edge-guide",
  "freehand",
] as const;

export type GuideName = (typeof GUIDE_NAMES)[number];
