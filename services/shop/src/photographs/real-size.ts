import { createInflate } from "node:zlib";
import type { ImageType } from "./schema.ts";

type Size = { readonly width: number; readonly height: number };

/** Bytes around a chunk's content, and of the signature before the first (PNG specification, third edition, 5.2 and 5.3). */
const PNG_SIGNATURE_BYTES = 8;
const PNG_AROUND_BYTES = 12;

/** Samples of a pixel by colour type (PNG specification, table 11.1). */
const PNG_SAMPLES: Readonly<Record<number, number>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };

/** The seven passes of an interlaced image: first column and row, and steps between them (PNG specification, 8.2). */
const ADAM7 = [
  [0, 0, 8, 8],
  [4, 0, 8, 8],
  [0, 4, 4, 8],
  [2, 0, 4, 4],
  [0, 2, 2, 4],
  [1, 0, 2, 2],
  [0, 1, 1, 2],
] as const;

/** Frame headers of a JPEG: SOF0 to SOF15 without the tables among them (ITU-T T.81, table B.1). */
const isFrame = (marker: number) => marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);

/**
 * Whether the picture itself is of the size that the image says, and nothing is hidden behind it. A PNG's is unpacked to see, beside
 * the event loop and no further than it says; a JPEG has one frame, and a WebP's picture fits its canvas. Takes an image without
 * metadata.
 */
export async function hasSaidSize(bytes: Buffer, type: ImageType, said: Size): Promise<boolean> {
  switch (type) {
    case "image/png":
      return pngFits(bytes);
    case "image/jpeg":
      return jpegFrames(bytes).length === 1;
    case "image/webp":
      return webpFits(bytes, said);
  }
}

async function pngFits(bytes: Buffer): Promise<boolean> {
  const packed: Buffer[] = [];
  let at = PNG_SIGNATURE_BYTES;
  while (at + PNG_AROUND_BYTES <= bytes.length) {
    const length = bytes.readUInt32BE(at);
    const name = bytes.toString("latin1", at + 4, at + 8);
    if (name === "IDAT") packed.push(bytes.subarray(at + 8, at + 8 + length));
    if (name === "IEND" && length > 0) return false;
    at += PNG_AROUND_BYTES + length;
  }
  const whole = Buffer.concat(packed);
  const expected = pngBytes(bytes);
  return expected !== undefined && (await unpackedLength(whole, expected)) === expected;
}

/** How long the picture of a PNG is unpacked, by its header. Undefined for a header that no PNG has. */
function pngBytes(bytes: Buffer): number | undefined {
  const width = bytes.readUInt32BE(16);
  const height = bytes.readUInt32BE(20);
  const [depth = 0, colour = 0, , , interlaced = 0] = bytes.subarray(24, 29);
  const samples = PNG_SAMPLES[colour];
  if (samples === undefined || ![1, 2, 4, 8, 16].includes(depth) || interlaced > 1) return undefined;
  const ofPart = (columns: number, rows: number) =>
    columns === 0 ? 0 : rows * (1 + Math.ceil((columns * samples * depth) / 8));
  if (interlaced === 0) return ofPart(width, height);
  const lines = (length: number, first: number, step: number) =>
    Math.max(0, Math.ceil((length - first) / step));
  return ADAM7.reduce(
    (sum, [column, row, across, down]) =>
      sum + ofPart(lines(width, column, across), lines(height, row, down)),
    0,
  );
}

/** The length of what was packed; undefined when it cannot be unpacked, is longer than this, or something follows it. */
function unpackedLength(packed: Buffer, most: number): Promise<number | undefined> {
  return new Promise((resolve) => {
    const inflate = createInflate();
    let length = 0;
    inflate.on("data", (piece: Buffer) => {
      length += piece.length;
      if (length <= most) return;
      inflate.destroy();
      resolve(undefined);
    });
    inflate.on("error", () => resolve(undefined));
    inflate.on("end", () => resolve(inflate.bytesWritten === packed.length ? length : undefined));
    inflate.end(packed);
  });
}

/** The markers of the frames before the picture. */
function jpegFrames(bytes: Buffer): number[] {
  const frames: number[] = [];
  let at = 2;
  while (at + 4 <= bytes.length && bytes[at] === 0xff) {
    const marker = bytes[at + 1] ?? 0;
    if (isFrame(marker)) frames.push(marker);
    if (marker === 0xda) break;
    at += 2 + bytes.readUInt16BE(at + 2);
  }
  return frames;
}

/** Each picture of a WebP lies on its canvas: one that does not move covers it (RFC 9649, sections 2.5 to 2.7). */
function webpFits(bytes: Buffer, { width, height }: Size): boolean {
  let at = 12;
  while (at + 8 <= bytes.length) {
    const name = bytes.toString("latin1", at, at + 4);
    const length = bytes.readUInt32LE(at + 4);
    const picture = pictureSize(name, bytes.subarray(at + 8, at + 8 + length));
    if (picture !== undefined && (picture.width !== width || picture.height !== height)) return false;
    at += 8 + length + (length % 2);
  }
  return true;
}

function pictureSize(name: string, content: Buffer): Size | undefined {
  if (name === "VP8L" && content.length >= 5) {
    // A signature byte, then 14 bits each of width and height less one (RFC 9649, section 3.4).
    const bits = content.readUInt32LE(1);
    return { width: (bits & 0x3fff) + 1, height: ((bits >>> 14) & 0x3fff) + 1 };
  }
  if (name === "VP8 " && content.length >= 10) {
    // RFC 6386, section 9.1: 14 bits each behind the frame tag and the start code.
    return { width: content.readUInt16LE(6) & 0x3fff, height: content.readUInt16LE(8) & 0x3fff };
  }
  return undefined;
}
