import { bearing } from "./bearing.ts";
import { bearingAndPin } from "./bearing-and-pin.ts";
import { edgeGuide } from "./edge-guide.ts";
import { fence } from "./fence.ts";
import { fenceFlushWithBearing } from "./fence-flush-with-bearing.ts";
import { fenceWithOffsetOutfeed } from "./fence-with-offset-outfeed.ts";
import { freehand } from "./freehand.ts";
import { rails } from "./rails.ts";
import { sled } from "./sled.ts";
import { straightedge } from "./straightedge.ts";
import { template } from "./template.ts";
import { templateAndBushing } from "./template-and-bushing.ts";

/** Every guide, one line each, the one to be preferred first. */
export const GUIDES = [
  templateAndBushing,
  template,
  rails,
  straightedge,
  sled,
  fenceWithOffsetOutfeed,
  fence,
  fenceFlushWithBearing,
  bearing,
  bearingAndPin,
  edgeGuide,
  freehand,
] as const;

export type Guide = (typeof GUIDES)[number];

/** A guide that is set to a distance from the bit. */
export type SetGuideName = Extract<Guide, { readonly isSet: true }>["name"];
