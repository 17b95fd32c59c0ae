import { crc32 } from "node:zlib";
import { orientationIn, tiffOf, UPRIGHT } from "./orientation.ts";

const SIGNATURE_BYTES = 8;
/** Length, name and checksum around the content of a chunk (PNG specification, 5.3). */
const AROUND_BYTES = 12;

/** Chunks that a picture is seen by (PNG specification, third edition): no text, no time, no Exif, nothing private. */
const SEEN = new Set([
  ...["IHDR", "PLTE", "IDAT", "IEND", "tRNS", "gAMA", "cHRM", "sRGB", "iCCP", "cICP", "mDCV", "cLLI"],
  ...["sBIT", "pHYs", "bKGD", "hIST", "sPLT", "acTL", "fcTL", "fdAT"],
]);

/** A PNG with its picture and its orientation alone. Undefined when its chunks cannot be followed to the end. */
export function withoutMetadataPng(bytes: Buffer): Buffer | undefined {
  const kept: Buffer[] = [];
  let orientation = UPRIGHT;
  let at = SIGNATURE_BYTES;
  for (;;) {
    if (at + AROUND_BYTES > bytes.length) return undefined;
    const end = at + AROUND_BYTES + bytes.readUInt32BE(at);
    if (end > bytes.length) return undefined;
    const name = bytes.toString("latin1", at + 4, at + 8);
    if (name === "eXIf") orientation = orientationIn(bytes.subarray(at + 8, end - 4));
    if (SEEN.has(name)) kept.push(bytes.subarray(at, end));
    if (name === "IEND") break;
    at = end;
  }
  const turned = orientation === UPRIGHT ? [] : [chunk("eXIf", tiffOf(orientation))];
  return Buffer.concat([
    bytes.subarray(0, SIGNATURE_BYTES),
    ...kept.slice(0, 1),
    ...turned,
    ...kept.slice(1),
  ]);
}

function chunk(name: string, content: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, "latin1"), content]);
  const whole = Buffer.alloc(body.length + 8);
  whole.writeUInt32BE(content.length, 0);
  body.copy(whole, 4);
  whole.writeUInt32BE(crc32(body), body.length + 4);
  return whole;
}
