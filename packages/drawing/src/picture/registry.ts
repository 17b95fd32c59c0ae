import { bitPicture } from "./bit/bit.ts";

/** Every picture, one line each. Adding one is its file and a line here. */
export const PICTURES = {
  bit: bitPicture,
} as const;

export type PictureKind = keyof typeof PICTURES;
