/** How a picture is to be turned to be seen upright: 1 is as it is (Exif 2.32, tag 0x0112). */
export type Orientation = number;

export const UPRIGHT: Orientation = 1;

const TAG_ORIENTATION = 0x0112;
const TYPE_SHORT = 3;
const ENTRY_BYTES = 12;
const MOST = 8;

/** The orientation that a TIFF header (Exif 2.32, section 4.5) names; upright for one that names none or cannot be read. */
export function orientationIn(tiff: Buffer): Orientation {
  const order = tiff.toString("latin1", 0, 2);
  if ((order !== "II" && order !== "MM") || tiff.length < 8) return UPRIGHT;
  const short = (at: number) => (order === "II" ? tiff.readUInt16LE(at) : tiff.readUInt16BE(at));
  const first = order === "II" ? tiff.readUInt32LE(4) : tiff.readUInt32BE(4);
  if (first + 2 > tiff.length) return UPRIGHT;
  const entries = short(first);
  for (let index = 0; index < entries; index += 1) {
    const at = first + 2 + index * ENTRY_BYTES;
    if (at + ENTRY_BYTES > tiff.length) return UPRIGHT;
    if (short(at) !== TAG_ORIENTATION || short(at + 2) !== TYPE_SHORT) continue;
    const value = short(at + 8);
    return value >= UPRIGHT && value <= MOST ? value : UPRIGHT;
  }
  return UPRIGHT;
}

/** A TIFF header that names an orientation and nothing else. */
export function tiffOf(orientation: Orientation): Buffer {
  const tiff = Buffer.alloc(26);
  tiff.write("MM", 0, "latin1");
  tiff.writeUInt16BE(42, 2);
  tiff.writeUInt32BE(8, 4);
  tiff.writeUInt16BE(1, 8);
  tiff.writeUInt16BE(TAG_ORIENTATION, 10);
  tiff.writeUInt16BE(TYPE_SHORT, 12);
  tiff.writeUInt32BE(1, 14);
  tiff.writeUInt16BE(orientation, 18);
  return tiff;
}
