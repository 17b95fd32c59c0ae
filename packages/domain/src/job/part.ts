import type { Edge } from "../cut/edge.ts";
import type { Work } from "../cut/work.ts";
import { choice, lengthMm } from "../quantity/field.ts";

/** The size of a part as data. The grain runs along its length. */
export const PART_FIELDS = {
  lengthMm: lengthMm("Length of the part, along the grain.", 10, 10_000),
  widthMm: lengthMm("Width of the part, across the grain.", 5, 3000),
  thicknessMm: lengthMm("Thickness of the part.", 3, 150),
  along: choice("What of the part is cut.", [
    "both-ends",
    "one-end",
    "both-sides",
    "one-side",
    "all-round",
    "face-across",
    "face-along",
  ]),
};

/** How many pieces one part of a job may have, spares among them. */
export const PIECES_RANGE = { min: 1, max: 10_000 } as const;

/** Where on a part a cut runs: ends are end grain, sides long grain; a face is cut across or along the grain. */
export type PartPlace = (typeof PART_FIELDS.along)["names"][number];

/** The size of one piece of a part. */
export type PartSize = { readonly lengthMm: number; readonly widthMm: number; readonly thicknessMm: number };

/**
 * The edges of one piece that a cut runs along, ends first.
 * @example
 * partEdges({ lengthMm: 600, widthMm: 60, thicknessMm: 19 }, "both-ends")
 * // → [{ lengthMm: 60, grain: "end" }, { lengthMm: 60, grain: "end" }]
 */
export function partEdges({ lengthMm, widthMm }: PartSize, along: PartPlace): Edge[] {
  const end: Edge = { lengthMm: widthMm, grain: "end" };
  const side: Edge = { lengthMm, grain: "long" };
  switch (along) {
    case "both-ends":
      return [end, end];
    case "one-end":
      return [end];
    case "both-sides":
      return [side, side];
    case "one-side":
      return [side];
    case "all-round":
      return [end, end, side, side];
    case "face-across":
      return [{ lengthMm: widthMm, grain: "across" }];
    case "face-along":
      return [side];
  }
}

/**
 * One piece of a part as the work that is held, so many alike.
 * @example
 * partWork({ lengthMm: 600, widthMm: 60, thicknessMm: 19 }, 26)
 * // → { lengthMm: 600, widthMm: 60, thicknessMm: 19, count: 26 }
 */
export function partWork({ lengthMm, widthMm, thicknessMm }: PartSize, pieces: number): Work {
  return { lengthMm, widthMm, thicknessMm, count: pieces };
}
