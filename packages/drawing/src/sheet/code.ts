import type { Contour, Point } from "../scene/contour.ts";
import { path, rectangle } from "../scene/path.ts";
import type { GroupItem } from "../scene/scene.ts";

/** A QR code as it was encoded: what it opens, and as many modules a side, row by row, true where one is dark. */
export type CodeModules = {
  readonly opens: string;
  readonly size: number;
  readonly isDark: readonly boolean[];
};

/** White around the code, in modules: ISO/IEC 18004 asks for four. */
const QUIET_MODULES = 4;

/** A code in a square of this size, its quiet zone inside: dark modules beside each other in a row are one rectangle. */
export function code({ opens, size, isDark }: CodeModules, { xMm, yMm }: Point, sizeMm: number): GroupItem {
  const moduleMm = sizeMm / (size + 2 * QUIET_MODULES);
  const contours: Contour[] = [];
  for (let row = 0; row < size; row += 1) {
    let start: number | undefined;
    for (let column = 0; column <= size; column += 1) {
      const dark = column < size && isDark[row * size + column] === true;
      if (dark && start === undefined) start = column;
      if (dark || start === undefined) continue;
      const at = (modules: number) => (QUIET_MODULES + modules) * moduleMm;
      contours.push(
        ...rectangle(
          { xMm: xMm + at(start), yMm: yMm + at(row) },
          { xMm: xMm + at(column), yMm: yMm + at(row + 1) },
        ),
      );
      start = undefined;
    }
  }
  return {
    kind: "group",
    of: "picture",
    label: `QR code that opens ${opens}`,
    items: [path({ of: "code" }, contours, "none", "ink")],
  };
}
