import { orientationIn, tiffOf, UPRIGHT } from "./orientation.ts";

/** "RIFF", a length, "WEBP" (RFC 9649, section 2.4). */
const HEAD_BYTES = 12;
const CHUNK_HEAD_BYTES = 8;
/** Bits of the extended header that say that there is Exif, and XMP (RFC 9649, section 2.7.1). */
const HAS_EXIF = 0x08;
const HAS_XMP = 0x04;
/** Some writers put the JPEG's own mark before the TIFF header. */
const EXIF_MARK = "Exif\0\0";

const SEEN = new Set(["VP8 ", "VP8L", "VP8X", "ALPH", "ANIM", "ANMF", "ICCP"]);

/** A WebP with its picture and its orientation alone. Undefined when its chunks cannot be followed to the end. */
export function withoutMetadataWebp(bytes: Buffer): Buffer | undefined {
  const end = Math.min(bytes.length, CHUNK_HEAD_BYTES + bytes.readUInt32LE(4));
  const kept: Buffer[] = [];
  let orientation = UPRIGHT;
  let at = HEAD_BYTES;
  while (at < end) {
    if (at + CHUNK_HEAD_BYTES > end) return undefined;
    const length = bytes.readUInt32LE(at + 4);
    const next = at + CHUNK_HEAD_BYTES + length + (length % 2);
    if (at + CHUNK_HEAD_BYTES + length > end) return undefined;
    const name = bytes.toString("latin1", at, at + 4);
    const content = bytes.subarray(at + CHUNK_HEAD_BYTES, at + CHUNK_HEAD_BYTES + length);
    if (name === "EXIF") orientation = orientationIn(withoutMark(content));
    if (SEEN.has(name)) kept.push(Buffer.from(bytes.subarray(at, Math.min(next, end))));
    at = next;
  }
  const extended = kept.find((each) => each.toString("latin1", 0, 4) === "VP8X");
  // Only the extended form has a place for an orientation.
  const turned = extended === undefined || orientation === UPRIGHT ? [] : [exifChunk(orientation)];
  if (extended !== undefined) {
    const flags = (extended[CHUNK_HEAD_BYTES] ?? 0) & ~(HAS_EXIF | HAS_XMP);
    extended[CHUNK_HEAD_BYTES] = flags | (turned.length > 0 ? HAS_EXIF : 0);
  }
  const content = Buffer.concat([...kept, ...turned]);
  const head = Buffer.from(bytes.subarray(0, HEAD_BYTES));
  head.writeUInt32LE(content.length + 4, 4);
  return Buffer.concat([head, content]);
}

function withoutMark(content: Buffer): Buffer {
  const isMarked = content.toString("latin1", 0, EXIF_MARK.length) === EXIF_MARK;
  return isMarked ? content.subarray(EXIF_MARK.length) : content;
}

function exifChunk(orientation: number): Buffer {
  const tiff = tiffOf(orientation);
  const head = Buffer.alloc(CHUNK_HEAD_BYTES);
  head.write("EXIF", 0, "latin1");
  head.writeUInt32LE(tiff.length, 4);
  return Buffer.concat([head, tiff]);
}
