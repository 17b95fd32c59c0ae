import type { FindingCode } from "../../../plan/findings.ts";

/** Of plans that older versions made. */
type FormerFindingCode = "climb-cut";

/** What each finding of a plan means. */
export const FINDING_MEANINGS: Readonly<Record<FindingCode | FormerFindingCode, string>> = {
  "table-only": "The bit is not for a handheld router.",
  "router-too-fast": "Even the slowest speed of the router is over a limit of the bit.",
  "no-collet-fits": "No collet of the router that is fit for use is made for the bit's shank.",
  "too-many-passes": "Even in many passes the cut is too heavy for the bit and the set-up.",
  "too-heavy-at-once": "The cut can only be made at one setting, and in one run it is too heavy.",
  "climb-not-allowed":
    "The cut must not be fed with the rotation: in a table never, by hand if the policy says so.",
  "nothing-guides": "Nothing guides the cut; the text says what would.",
  "guide-does-not-serve": "The guide that was named cannot guide this cut; the text says what would.",
  "bearing-without-wood": "The bearing has too little of the edge to run on.",
  "template-too-thin": "The template is too thin to carry the whole bearing.",
  "bushing-too-small": "The bit does not turn free in the bushing.",
  "handheld-with-care": "The bit is at the limit of what a handheld router may hold.",
  "carried-on-rails": "In the hands alone the bit is for a table only; here a carriage on rails carries it.",
  "large-bit": "The bit is for a table only, or nearly: large or heavy, it deserves care there too.",
  "light-climb-cut": "The cut is fed with the rotation, in light bites, if the person in charge allows it.",
  "thin-chip": "Even at the fastest feed by hand the chips are so thin that the edge rubs and burns.",
  "trials-contradict": "Speed trials of the bit disagree; the safe side is taken.",
  "shook-in-other-router": "The bit shook in another router, which is no limit in this one.",
  "came-loose-before": "The bit has come loose in the cut before.",
  "chattered-before": "The bit has chattered in this router before.",
  "feed-only": "The bit is wider below than above, so it must not be lifted or tilted in the cut.",
  "waste-first": "Most of the wood must be taken out with another bit first.",
  "burn-risk": "The thinnest chips or the slowest part of the edge may scorch the wood.",
  "tear-out-risk": "No long-grain cut after the end grain takes broken corners away.",
  melts: "The material melts before it burns.",
  "frays-near-face": "An up-cut spiral frays the face that lies on the table or under the base.",
  "frays-far-face": "A down-cut spiral frays the face where the bit comes out.",
  "chips-packed": "A down-cut spiral presses the chips into the groove.",
  "compression-unknown": "How long the up-cut tip of a compression bit is was not given.",
  "compression-shallow": "The first pass is no deeper than the up-cut tip of a compression bit.",
  "scorched-before": "The bit has scorched this wood before.",
  "tore-out-before": "The bit has torn this wood before.",
  "climb-cut": "The cut is too heavy to be fed with the rotation. Only in plans of older versions.",
};
