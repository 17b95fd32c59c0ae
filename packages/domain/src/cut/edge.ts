import { choice, type FieldsOf, lengthMm } from "../quantity/field.ts";

/** The fields of one edge as data. */
export const EDGE_FIELDS = {
  lengthMm: lengthMm("Length of the edge or run.", 10, 10_000),
  grain: choice("Into the end of the grain, along the grain, or across it in a face, as a dado in a shelf.", [
    "end",
    "long",
    "across",
  ]),
};

/** How many edges one cut may have. */
export const EDGES_RANGE = { min: 1, max: 100 } as const;

/** One edge, one run of a groove, or one row of a surface, to be cut. */
export type Edge = FieldsOf<typeof EDGE_FIELDS>;
