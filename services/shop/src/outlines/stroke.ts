/** A corner of a drawn outline: x is the radius, y the distance from the tip. */
export type Corner = { readonly xMm: number; readonly yMm: number };

/** One command of a path, from where the one before ended. `command` is its place in the path, from 1. */
export type Stroke = { readonly command: number; readonly to: Corner } & (
  | { readonly kind: "line" }
  | { readonly kind: "arc"; readonly radiusMm: number; readonly bulge: "outward" | "inward" }
  | { readonly kind: "curve"; readonly controls: readonly Corner[] }
);

/** What cannot be read, and what would be. */
export type PathFault = { readonly message: string; readonly accepted: string };
