import type { FormKind } from "../bit/form/registry.ts";
import type { CutKind } from "../bit/form/usual-cut.ts";
import type { Edge } from "../cut/edge.ts";

/** Why one set-up comes before another. Source of the trade's rules: common practice. */
export type OrderRule =
  | "passes-in-order"
  | "waste-before-undercut"
  | "references-before-they-are-cut-away"
  | "cope-before-stick"
  | "end-grain-before-long";

/** What the order of two cuts in one part depends on. */
export type OrderedCut = {
  readonly kind: CutKind;
  readonly form: FormKind;
  readonly edges: readonly Edge[];
  /** Whether it takes wood out for the cut that follows it. */
  readonly isWasteFor?: number | undefined;
};

/**
 * Faces are made flat and edges made true first; then what is measured from whole edges and faces (joints, grooves), then what cuts
 * those away. Source: common practice.
 */
const STAGES: Readonly<Record<CutKind, number>> = {
  surface: 0,
  trim: 1,
  joint: 2,
  groove: 2,
  inlay: 2,
  rabbet: 3,
  panel: 3,
  edge: 3,
};

/**
 * Why the first of two cuts in one part comes before the second; undefined if it need not.
 * @example
 * const cope = { kind: "joint", form: "cope", edges: [{ lengthMm: 60, grain: "end" }] };
 * const stick = { kind: "joint", form: "stick", edges: [{ lengthMm: 600, grain: "long" }] };
 * ruleBetween(cope, stick) // → "cope-before-stick"
 */
export function ruleBetween(first: OrderedCut, second: OrderedCut): OrderRule | undefined {
  if (STAGES[first.kind] !== STAGES[second.kind]) {
    return STAGES[first.kind] < STAGES[second.kind] ? "references-before-they-are-cut-away" : undefined;
  }
  if (first.form === "cope" && second.form === "stick") return "cope-before-stick";
  if (first.form === "stick" && second.form === "cope") return undefined;
  return isAcross(first) && hasLong(second) && !hasLong(first) ? "end-grain-before-long" : undefined;
}

function isAcross({ edges }: OrderedCut): boolean {
  return edges.every(({ grain }) => grain !== "long");
}

function hasLong({ edges }: OrderedCut): boolean {
  return edges.some(({ grain }) => grain === "long");
}
