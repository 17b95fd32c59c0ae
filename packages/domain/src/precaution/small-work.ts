import { definePrecaution } from "./define.ts";

/** 12 in unless in an approved jig: a school rule (references §5). Source: common practice. */
const SHORTEST_BY_HAND_MM = 304.8;

/** Short work brings hands near the bit. Source: common practice. */
export const smallWork = definePrecaution({
  code: "small-work",
  applies: ({ cut }) => {
    const shortestMm = Math.min(...cut.edges.map(({ lengthMm }) => lengthMm));
    return shortestMm < SHORTEST_BY_HAND_MM ? { shortestMm, leastMm: SHORTEST_BY_HAND_MM } : undefined;
  },
});
