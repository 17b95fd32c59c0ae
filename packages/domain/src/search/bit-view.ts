import { type Outline, outlineLengthMm } from "../bit/outline.ts";
import { SAME_HEIGHT_MM } from "./curve.ts";
import { type Curve, greatestDepthMm, linePiece, type Piece, raised, upsideDown } from "./piece.ts";
import type { Presentation } from "./wanted.ts";

/** A bit of the rack, as far as the search knows it. */
export type SearchBit = {
  readonly id: string;
  readonly outline: Outline;
  readonly pilotRadiusMm: number | undefined;
};

/**
 * A bit against a wall, in the wall's own frame: its edges as radius over height, from where the height 0 of the bit's frame
 * lies `raiseMm` above the table. With the work turned over the tip points the other way.
 */
export type BitView = {
  readonly bit: SearchBit;
  readonly presentation: Presentation;
  readonly edges: Curve;
  /** The middle of each place between two edges that does not cut, such as a bearing between cutters. */
  readonly gapsMm: readonly number[];
  /** Parts that do not cut, and must not come into the stock. */
  readonly bodies: Curve;
  /** The pilot's radius, or 0: the axis never stands in front of the fence. */
  readonly leastFenceMm: number;
  /** Greatest radius that cuts. */
  readonly rimMm: number;
  /** How far the frame may be raised, so that some of the bit stands out of the table and none of its shank. */
  readonly raiseFromMm: number;
  readonly raiseToMm: number;
  /** Height of the bit out of the table; the same function leads back. */
  readonly heightMm: (raiseMm: number) => number;
};

/** A bit as a wall lying that way up shows it; `topMm` is the height of the work. */
export function bitView(bit: SearchBit, presentation: Presentation, topMm: number): BitView {
  const isTurned = presentation.work === "flat" && presentation.face === "back";
  const seen = (role: "edge" | "body") => {
    const pieces = bit.outline.filter((segment) => segment.role === role).map(pieceOf);
    return isTurned ? pieces : pieces.map(upsideDown).reverse();
  };
  const edges = seen("edge");
  const lengthMm = outlineLengthMm(bit.outline);
  return {
    bit,
    presentation,
    edges,
    gapsMm: gapsMm(edges),
    bodies: seen("body"),
    leastFenceMm: Math.max(0, bit.pilotRadiusMm ?? 0),
    rimMm: Math.max(0, ...edges.map((piece) => greatestDepthMm(piece, piece.fromMm, piece.toMm))),
    raiseFromMm: isTurned ? topMm - lengthMm : 0,
    raiseToMm: isTurned ? topMm : lengthMm,
    heightMm: isTurned ? (raiseMm) => topMm - raiseMm : (raiseMm) => raiseMm,
  };
}

function gapsMm(edges: Curve): number[] {
  return edges.slice(1).flatMap((edge, index) => {
    const endMm = edges[index]?.toMm ?? edge.fromMm;
    return edge.fromMm - endMm > SAME_HEIGHT_MM ? [(endMm + edge.fromMm) / 2] : [];
  });
}

/** The widest part that does not cut and stands beside work of this height at every raise between two. */
export function bodyBesideMm({ bodies }: BitView, fromMm: number, toMm: number, topMm: number): number {
  let widestMm = 0;
  for (const body of bodies) {
    const isBeside = body.toMm + fromMm > SAME_HEIGHT_MM && body.fromMm + toMm < topMm - SAME_HEIGHT_MM;
    if (isBeside) widestMm = Math.max(widestMm, greatestDepthMm(body, body.fromMm, body.toMm));
  }
  return widestMm;
}

/** What the edges of a view reach at each height when it is raised and stands so far behind the fence. */
export function reachedPieces({ edges }: BitView, raiseMm: number, fenceMm: number): Piece[] {
  return edges.map((piece) => {
    const up = raised(piece, raiseMm);
    return up.kind === "line"
      ? { ...up, startDepthMm: up.startDepthMm - fenceMm, endDepthMm: up.endDepthMm - fenceMm }
      : { ...up, centreDepthMm: up.centreDepthMm - fenceMm };
  });
}

function pieceOf(segment: Outline[number]): Piece {
  const { fromMm, toMm } = segment;
  if (segment.kind === "line") return linePiece(fromMm, toMm, segment.startRadiusMm, segment.endRadiusMm);
  const { centreMm, arcRadiusMm, side } = segment;
  return { kind: "arc", fromMm, toMm, centreMm, centreDepthMm: segment.centreRadiusMm, arcRadiusMm, side };
}
