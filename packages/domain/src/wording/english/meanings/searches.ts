import type { NotTakenReason } from "../../../search/not-taken.ts";

/** What each reason for not taking a bit means. */
export const NOT_TAKEN_MEANINGS: Readonly<Record<NotTakenReason["code"], string>> = {
  "leaves-too-much": "At the nearest of the heights that were tried, it leaves more than the tolerance.",
  "pilot-in-the-way": "Its bearing keeps it from reaching so deep.",
  "body-in-the-way": "A part of it that does not cut keeps it from reaching so deep.",
  "gouges-everywhere": "Wherever it would cut some of the waste, it would also cut into what must stay.",
  "too-small": "Its radius is less than the depth of the cut.",
  "out-of-reach": "It does not stand out far enough for its edges to come to the cut.",
  "too-short": "Its edges are shorter than the cut is high.",
  dominated: "In several set-ups, another bit takes away all that this one could.",
};
