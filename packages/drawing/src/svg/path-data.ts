import type { Contour } from "../scene/contour.ts";
import { short } from "./number.ts";

/** Contours as the data of a path. */
export function pathData(contours: readonly Contour[]): string {
  let data = "";
  for (const { start, pieces, isClosed } of contours) {
    data += `M${short(start.xMm)} ${short(start.yMm)}`;
    for (const piece of pieces) {
      const to = `${short(piece.to.xMm)} ${short(piece.to.yMm)}`;
      if ("radiusMm" in piece) {
        const radius = short(piece.radiusMm);
        data += `A${radius} ${radius} 0 0 ${piece.isClockwise ? 1 : 0} ${to}`;
      } else data += `L${to}`;
    }
    if (isClosed) data += "Z";
  }
  return data;
}
