import { orientationIn, tiffOf, UPRIGHT } from "./orientation.ts";

/** Markers of a JPEG (ITU-T T.81, table B.1): each follows a byte of ones. */
const MARK = 0xff;
const START = Buffer.from([MARK, 0xd8]);
const END_OF_IMAGE = 0xd9;
const START_OF_SCAN = 0xda;
const FIRST_APP = 0xe0;
const LAST_APP = 0xef;
const COMMENT = 0xfe;
const EXIF = Buffer.from("Exif\0\0", "latin1");

/** Application segments that a picture is seen by: its density, its colour profile, how its colours are coded. */
const NEEDED: ReadonlyMap<number, string> = new Map([
  [0xe0, "JFIF\0"],
  [0xe2, "ICC_PROFILE\0"],
  [0xee, "Adobe"],
]);

/**
 * A JPEG with its picture and its orientation alone: no Exif, XMP or IPTC, no comment, nothing after its end. Undefined when its
 * segments cannot be followed to the end.
 */
export function withoutMetadataJpeg(bytes: Buffer): Buffer | undefined {
  if (!bytes.subarray(0, 2).equals(START)) return undefined;
  const kept: Buffer[] = [];
  let orientation = UPRIGHT;
  let at = 2;
  for (;;) {
    while (bytes[at] === MARK && bytes[at + 1] === MARK) at += 1;
    const marker = bytes[at + 1];
    if (bytes[at] !== MARK || marker === undefined) return undefined;
    if (marker === END_OF_IMAGE) break;
    if (at + 4 > bytes.length) return undefined;
    const end = at + 2 + bytes.readUInt16BE(at + 2);
    if (end > bytes.length) return undefined;
    const content = bytes.subarray(at + 4, end);
    if (marker === 0xe1 && content.subarray(0, EXIF.length).equals(EXIF)) {
      orientation = orientationIn(content.subarray(EXIF.length));
    }
    const next = marker === START_OF_SCAN ? scanEnd(bytes, end) : end;
    if (isKept(marker, content)) kept.push(bytes.subarray(at, next));
    at = next;
  }
  const turned = orientation === UPRIGHT ? [] : [exifSegment(orientation)];
  // A density segment comes first of all (JFIF 1.02).
  const first = kept[0]?.[1] === FIRST_APP ? kept.slice(0, 1) : [];
  return Buffer.concat([
    START,
    ...first,
    ...turned,
    ...kept.slice(first.length),
    Buffer.from([MARK, END_OF_IMAGE]),
  ]);
}

function isKept(marker: number, content: Buffer): boolean {
  if (marker === COMMENT) return false;
  if (marker < FIRST_APP || marker > LAST_APP) return true;
  const needed = NEEDED.get(marker);
  return needed !== undefined && content.toString("latin1", 0, needed.length) === needed;
}

/** Where the coded picture ends: at the next marker that is neither a stuffed byte nor a restart (ITU-T T.81, B.1.1.5). */
function scanEnd(bytes: Buffer, from: number): number {
  let at = bytes.indexOf(MARK, from);
  while (at >= 0) {
    const next = bytes[at + 1] ?? END_OF_IMAGE;
    const isWithin = next === 0 || (next >= 0xd0 && next <= 0xd7);
    if (!isWithin) return at;
    at = bytes.indexOf(MARK, at + 2);
  }
  return bytes.length;
}

function exifSegment(orientation: number): Buffer {
  const content = Buffer.concat([EXIF, tiffOf(orientation)]);
  const head = Buffer.from([MARK, 0xe1, 0, 0]);
  head.writeUInt16BE(content.length + 2, 2);
  return Buffer.concat([head, content]);
}
