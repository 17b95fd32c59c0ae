import { bitPicture } from "./bit/bit.ts";
import { dayPicture } from "./day.ts";
import { dialPicture } from "./dial.ts";
import { diameterSpeedPicture } from "./diameter-speed.ts";
import { jointPicture } from "./joint.ts";
import { limitsPicture } from "./limits.ts";
import { mouldingPicture } from "./moulding.ts";
import { panelPicture } from "./panel.ts";
import { rackPicture } from "./rack.ts";
import { setUpPicture } from "./set-up/set-up.ts";

/** Every picture, one line each. Adding one is its file and a line here. */
export const PICTURES = {
  bit: bitPicture,
  "set-up": setUpPicture,
  limits: limitsPicture,
  dial: dialPicture,
  "diameter-speed": diameterSpeedPicture,
  joint: jointPicture,
  panel: panelPicture,
  moulding: mouldingPicture,
  rack: rackPicture,
  day: dayPicture,
} as const;

export type PictureKind = keyof typeof PICTURES;
