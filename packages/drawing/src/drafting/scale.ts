/**
 * Scales that drawings are made at, largest first: so many mm of paper for one. ISO 5455, from memory, has 1, 2 and 5 of each power of ten;
 * those between are ours, for a small page.
 */
const SCALES = [20, 10, 8, 6, 5, 4, 3, 2.5, 2, 1.5, 1, 1 / 1.5, 1 / 2, 1 / 3, 1 / 4, 1 / 5, 1 / 10, 1 / 20];

/** The largest of them at which something so wide and so high fits in this room; smaller than all if none does. */
export function scaleFor(
  thing: { readonly widthMm: number; readonly heightMm: number },
  room: { readonly widthMm: number; readonly heightMm: number },
): number {
  const most = Math.min(room.widthMm / thing.widthMm, room.heightMm / thing.heightMm);
  return SCALES.find((scale) => scale <= most) ?? most;
}

/** A scale as it is written on a drawing: "2:1", "1:5". */
export function scaleText(scale: number): string {
  const part = (value: number) => String(Number(value.toPrecision(2)));
  return scale >= 1 ? `${part(scale)}:1` : `1:${part(1 / scale)}`;
}
