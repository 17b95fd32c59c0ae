import type { GuideName } from "../../cut/guide-name.ts";
import type { GuideOffer } from "../../guide/finding.ts";

/** What guides a cut, by name. */
export const GUIDE_MEANINGS: Readonly<Record<GuideName, string>> = {
  template: "The bearing runs on the template.",
  "template-and-bushing": "The bushing around the bit runs along the template.",
  rails: "The router runs in a carriage on rails over the work.",
  sled: "The work is clamped on a sled that runs along the fence.",
  "fence-with-offset-outfeed":
    "The work runs along a fence in two halves, the outfeed one at the finished edge.",
  freehand: "The hands alone guide it.",
  straightedge: "The base runs along a straightedge clamped to the work.",
  fence: "The work runs along the fence.",
  "fence-flush-with-bearing": "The work runs along the fence, flush with the bearing.",
  bearing: "The bearing runs along the edge of the work.",
  "bearing-and-pin": "The work starts against the pin and then runs on the bearing, without a fence.",
  "edge-guide": "The edge guide on the base runs along the edge of the work.",
};

/**
 * What guides the cut, as a sentence.
 * @example
 * describeGuide("fence") // → "The work runs along the fence."
 */
export function describeGuide(guide: GuideName): string {
  return GUIDE_MEANINGS[guide];
}

const TITLES: Readonly<Record<GuideName, string>> = {
  "template-and-bushing": "a template and a bushing",
  template: "a template and a bit with a bearing",
  rails: "rails",
  straightedge: "a straightedge",
  sled: "a sled",
  "fence-with-offset-outfeed": "a fence with its outfeed half offset",
  fence: "the fence",
  "fence-flush-with-bearing": "the fence, flush with the bearing",
  bearing: "the bearing",
  "bearing-and-pin": "the bearing, started on a pin",
  "edge-guide": "an edge guide",
  freehand: "the hands alone",
};

/**
 * The guide in the middle of a sentence.
 * @example
 * guideTitle("edge-guide") // → "an edge guide"
 */
export function guideTitle(guide: GuideName): string {
  return TITLES[guide];
}

/** What would guide a cut instead, as a sentence. */
export function describeOffers(offers: readonly GuideOffer[]): string {
  const [first] = offers;
  if (first === undefined) {
    return "A curved edge or an opening takes a bit with a bearing that runs on the work and gives the whole depth, or a template; otherwise cut along a straight edge.";
  }
  const names = offers.map(({ guide }) => guideTitle(guide)).join(", or ");
  return `With the router ${first.mounting === "table" ? "in a table" : "held by hand"} this would: ${names}.`;
}
