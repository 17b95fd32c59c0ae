import { bearing } from "./bearing.ts";
import { bearingAndPin } from "./bearing-and-pin.ts";
import type { GuideContext } from "./define.ts";
import { edgeGuide } from "./edge-guide.ts";
import { fence } from "./fence.ts";
import { fenceFlushWithBearing } from "./fence-flush-with-bearing.ts";
import { rails } from "./rails.ts";
import { straightedge } from "./straightedge.ts";
import { template } from "./template.ts";

/** Every guide, one line each, the one to be preferred first. */
export const GUIDES = [
  template,
  rails,
  straightedge,
  fence,
  fenceFlushWithBearing,
  bearing,
  bearingAndPin,
  edgeGuide,
] as const;

export type Guide = (typeof GUIDES)[number];

export type GuideName = Guide["name"];

/** A guide that is set to a distance from the bit. */
export type SetGuideName = Extract<Guide, { readonly isSet: true }>["name"];

/** The guide that a cut is planned with; undefined if none serves, and then nothing may be cut. */
export function guideFor(context: GuideContext): Guide | undefined {
  return GUIDES.find(({ serves }) => serves(context));
}
