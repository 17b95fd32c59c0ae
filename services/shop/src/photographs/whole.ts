import type { ImageType } from "./schema.ts";

/** The last chunk of a PNG, which is empty: its length, its name, its checksum (PNG specification, IEND). */
const PNG_END = Buffer.from("0000000049454e44ae426082", "hex");

/** Markers of a JPEG (ITU-T T.81, table B.1): each follows a byte of ones. */
const START_OF_SCAN = 0xda;
const END_OF_IMAGE = Buffer.from("ffd9", "hex");

/** Whether an image of this type has its end: half an upload has not. What follows the end is not looked at. */
export function isWhole(bytes: Buffer, type: ImageType): boolean {
  switch (type) {
    case "image/png":
      return bytes.includes(PNG_END);
    case "image/webp":
      // RIFF: the length of what follows the first eight bytes stands at the fifth.
      return bytes.length >= 8 && bytes.length >= 8 + bytes.readUInt32LE(4);
    case "image/jpeg":
      return bytes.includes(END_OF_IMAGE, scanStart(bytes));
  }
}

/** Where the image itself begins, behind the segments before it: one of them may hold a whole small image of its own. */
function scanStart(bytes: Buffer): number {
  let at = 2;
  while (at + 4 <= bytes.length && bytes[at] === 0xff && bytes[at + 1] !== START_OF_SCAN) {
    // A marker may be preceded by any number of bytes of ones.
    at += bytes[at + 1] === 0xff ? 1 : 2 + bytes.readUInt16BE(at + 2);
  }
  return Math.min(at, bytes.length);
}
