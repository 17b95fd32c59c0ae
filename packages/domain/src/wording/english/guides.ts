import type { GuideName } from "../../guide/registry.ts";

const SENTENCES: Readonly<Record<GuideName, string>> = {
  template: "The bearing runs on the template.",
  rails: "The router runs on rails or in a carriage over the work, or the work on a sled.",
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
  return SENTENCES[guide];
}
