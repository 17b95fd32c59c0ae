import { defineCodes } from "../http/code-list.ts";

export const JobState = defineCodes({
  name: "JobState",
  title: "How far a job is",
  meanings: {
    draft: "It is being put together: everything may change.",
    ready: "It is settled, and its bits are kept for its days.",
    "under-way": "Its first set-up has been made.",
    done: "Every set-up has been made, or somebody has ended it as done.",
    dropped: "It is not made.",
  },
});

export const JobFindingCode = defineCodes({
  name: "JobFindingCode",
  title: "What weighs on a job",
  meanings: {
    "no-bit": "No bit of the rack makes a cut as it is wanted.",
    "cut-not-possible": "A cut cannot be planned as it is asked for.",
    "cut-not-to-run": "The plan of a cut says not to run it.",
    "cut-with-care": "The plan of a cut says to run it with care.",
    "bit-away": "A bit is on loan or away at sharpening when the job begins.",
    "bit-kept": "A bit is kept for another job on the same days.",
    "pair-sharpened-apart": "Two bits that belong together were sharpened apart: their halves do not close.",
    "edge-dull": "A bit's edge is taken to be dull before the job is done.",
    "edge-due": "A bit is due for sharpening before the job is done.",
    "after-mishap": "What came out of an earlier set-up made this one lighter or slower.",
  },
});

export const OrderRuleCode = defineCodes({
  name: "OrderRuleCode",
  title: "Why one set-up comes before another",
  meanings: {
    "passes-in-order": "The passes of a cut are made in their order.",
    "waste-before-undercut": "Wood is taken out with a straight bit before an undercut one goes in.",
    "references-before-they-are-cut-away":
      "What is measured from whole edges and faces is cut before they are cut away.",
    "cope-before-stick":
      "Ends are coped before the edges are stuck, so that the stick cuts away what tore out.",
    "end-grain-before-long": "End grain is cut before long grain, which takes the broken corner away.",
  },
});

export const WhyNotTakenCode = defineCodes({
  name: "WhyNotTakenCode",
  title: "Why a bit was not taken for a cut",
  meanings: {
    "not-possible": "The cut cannot be planned with it.",
    "not-to-run": "Its plan says not to run it.",
    "out-of-use": "It is held or retired.",
    elsewhere: "It is on loan, away at sharpening, or kept for another job.",
    "more-care": "Its plan asks for more care than the one taken.",
    "more-passes": "It takes more passes than the one taken.",
    slower: "It takes longer than the one taken.",
    "same-again": "It is as good as the one taken.",
  },
});

export const GroundChangeCode = defineCodes({
  name: "GroundChangeCode",
  title: "What a job rests on that has changed",
  meanings: {
    "bit-gone": "The bit is no longer on the rack.",
    "bit-out-of-use": "The bit is held or retired.",
    "bit-elsewhere": "The bit is on loan, away at sharpening, or kept for another job.",
    "bit-sharpened": "The bit was sharpened.",
    "router-gone": "The router is no longer in the shop.",
    "figures-changed": "What is known of the bit in the router has changed.",
  },
});

export const JOB_CODES = [JobState, JobFindingCode, OrderRuleCode, WhyNotTakenCode, GroundChangeCode];
