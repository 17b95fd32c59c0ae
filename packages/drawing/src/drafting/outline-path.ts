import { type Outline, radiusOnSegmentMm, type Segment } from "@rimwise/domain";
import type { Contour, Piece, Point } from "../scene/contour.ts";
import { type Frame, onPaper } from "../scene/frame.ts";

/** Where a bit stands in the world of a frame: its axis, its tip, and which way its shank points. */
export type Standing = { readonly axisMm: number; readonly tipMm: number; readonly shankToward: 1 | -1 };

/** A stretch of a segment, from the tip's side to the shank's. */
export type SegmentPart = { readonly segment: Segment; readonly fromMm: number; readonly toMm: number };

/** The outline of a bit on both sides of its axis, closed across its tip and its foot: true arcs, and steps as they are. */
export function outlineContour(outline: Outline, frame: Frame, standing: Standing): Contour[] {
  const parts = outline.map((segment) => ({ segment, fromMm: segment.fromMm, toMm: segment.toMm }));
  const right = partsContour(parts, frame, standing, 1);
  const left = partsContour(parts, frame, standing, -1);
  if (right === undefined || left === undefined) return [];
  const pieces = [...right.pieces, { to: endOf(left) }, ...reversed(left)];
  return [{ start: right.start, pieces, isClosed: true }];
}

/** Parts of an outline on one side of the axis, one line through all of them. */
export function partsContour(
  parts: readonly SegmentPart[],
  frame: Frame,
  standing: Standing,
  side: 1 | -1,
): Contour | undefined {
  const place = (radiusMm: number, tMm: number) =>
    onPaper(frame, standing.axisMm + side * radiusMm, standing.tipMm + standing.shankToward * tMm);
  // An outward arc turns clockwise on paper on its way down the right side of a bit that stands on its shank.
  const turnsRight = frame.scaleX * frame.scaleY * side * standing.shankToward > 0;
  let start: Point | undefined;
  const pieces: Piece[] = [];
  for (const { segment, fromMm, toMm } of parts) {
    const from = place(radiusOnSegmentMm(segment, fromMm), fromMm);
    const to = place(radiusOnSegmentMm(segment, toMm), toMm);
    if (start === undefined) start = from;
    else pieces.push({ to: from });
    if (segment.kind === "line") pieces.push({ to });
    else {
      const radiusMm = segment.arcRadiusMm * Math.abs(frame.scaleX);
      const arcTo = (end: Point) =>
        pieces.push({ to: end, radiusMm, isClockwise: (segment.side === 1) === turnsRight });
      // Of half a circle the least rounding of a radius moves the middle: it is drawn as two quarters.
      const { centreMm } = segment;
      if (centreMm > fromMm && centreMm < toMm) arcTo(place(radiusOnSegmentMm(segment, centreMm), centreMm));
      arcTo(to);
    }
  }
  return start && { start, pieces, isClosed: false };
}

function endOf({ start, pieces }: Contour): Point {
  return pieces.at(-1)?.to ?? start;
}

function reversed({ start, pieces }: Contour): Piece[] {
  const back: Piece[] = [];
  for (let index = pieces.length - 1; index >= 0; index -= 1) {
    const piece = pieces[index];
    const to = pieces[index - 1]?.to ?? start;
    if (piece === undefined) continue;
    back.push("radiusMm" in piece ? { ...piece, to, isClockwise: !piece.isClockwise } : { to });
  }
  return back;
}
