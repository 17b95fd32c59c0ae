import { bitPicture } from "./bit/bit.ts";
import { setUpPicture } from "./set-up/set-up.ts";

/** Every picture, one line each. Adding one is its file and a line here. */
export const PICTURES = {
  bit: bitPicture,
  "set-up": setUpPicture,
} as const;

export type PictureKind = keyof typeof PICTURES;
