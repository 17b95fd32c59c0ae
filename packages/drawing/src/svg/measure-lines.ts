import type { Contour, Point } from "../scene/contour.ts";
import { polyline } from "../scene/path.ts";
import type { MeasureItem } from "../scene/scene.ts";

/** An arrow is about 3 times as long as it is wide; extension lines leave the object a gap and pass the dimension line. ISO 129, from memory. */
const ARROW_LENGTH_MM = 2;
const ARROW_HALF_MM = 0.35;
const GAP_MM = 0.6;
const PAST_MM = 1.2;
/** A length with no room for two arrows has them point at it from outside. */
const LEAST_INSIDE_MM = 3 * ARROW_LENGTH_MM;
const OUTSIDE_MM = 4;

/** The lines of a dimension, and its arrows. */
export function measureLines({ along, from, to, lineAtMm }: MeasureItem): {
  readonly lines: Contour[];
  readonly arrows: Contour[];
} {
  // Everything is worked out along x; for y the two are changed over at the end.
  const turn = ({ xMm, yMm }: Point): Point => (along === "x" ? { xMm, yMm } : { xMm: yMm, yMm: xMm });
  const [one, other] = [turn(from), turn(to)];
  const [low, high] = one.xMm <= other.xMm ? [one, other] : [other, one];
  const at = (xMm: number, yMm: number) => turn({ xMm, yMm });
  const extension = ({ xMm, yMm }: Point) => {
    const side = Math.sign(lineAtMm - yMm);
    return side === 0 ? [] : polyline([at(xMm, yMm + side * GAP_MM), at(xMm, lineAtMm + side * PAST_MM)]);
  };
  const arrow = (xMm: number, towards: number) =>
    polyline(
      [
        at(xMm, lineAtMm),
        at(xMm - towards * ARROW_LENGTH_MM, lineAtMm - ARROW_HALF_MM),
        at(xMm - towards * ARROW_LENGTH_MM, lineAtMm + ARROW_HALF_MM),
      ],
      true,
    );
  const isInside = high.xMm - low.xMm >= LEAST_INSIDE_MM;
  const overMm = isInside ? 0 : OUTSIDE_MM;
  return {
    lines: [
      ...extension(low),
      ...extension(high),
      ...polyline([at(low.xMm - overMm, lineAtMm), at(high.xMm + overMm, lineAtMm)]),
    ],
    arrows: [...arrow(low.xMm, isInside ? -1 : 1), ...arrow(high.xMm, isInside ? 1 : -1)],
  };
}
