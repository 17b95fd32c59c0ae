import { definePrecaution } from "./define.ts";

/** At least 1/2 in. Source: school and workshop rules (references §5), common practice. */
const LEAST_INSERTION_MM = 12.7;

/** And at least this many shank diameters: 1/2 in is only one of a 1/2 in shank. Ours. */
const INSERTION_PER_DIAMETER = 2;

/** Drawn back from the bottom about 1/8 in, the larger of the two figures in use. Source: common practice. */
const BACK_OFF_MM = 3.175;

/** How far the shank goes in. Sources differ (references §8.13): the deeper one holds for every shank. Source: common practice. */
export const seatInCollet = definePrecaution({
  code: "seat-in-collet",
  applies: ({ bit }) => ({
    insertionMm: Math.max(LEAST_INSERTION_MM, INSERTION_PER_DIAMETER * bit.shankDiameterMm),
    backOffMm: BACK_OFF_MM,
  }),
});
