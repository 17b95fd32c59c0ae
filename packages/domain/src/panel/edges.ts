import type { Edge } from "../cut/edge.ts";
import type { Wood } from "../wood/wood.ts";
import type { SizedPanel } from "./size-panel.ts";

/** Edges of one length and grain, over all the panels. */
export type PanelEdge = PanelSide & { readonly count: number };

/** No edge of a panel runs across the grain in a face. */
type PanelSide = Edge & { readonly grain: "end" | "long" };

/** What the edges of a list of panels come to. */
export type PanelTotals = {
  readonly panels: number;
  /** Faces of the panels, as they are cut. */
  readonly areaMm2: number;
  readonly edgeLengthMm: number;
};

/**
 * The edges of these panels, alike ones counted together, end grain first as they are cut. The two edges that cross the
 * grain are end grain; a material without grain has long ones only.
 */
export function panelEdges(panels: readonly SizedPanel[], wood: Wood): PanelEdge[] {
  const alike = new Map<string, PanelEdge>();
  for (const panel of panels) {
    for (const { lengthMm, grain } of edgesOf(panel, wood)) {
      const key = `${grain} ${lengthMm}`;
      // Each length is found on two opposite edges.
      const count = (alike.get(key)?.count ?? 0) + 2 * panel.count;
      alike.set(key, { lengthMm, grain, count });
    }
  }
  const edges = [...alike.values()];
  return [...edges.filter(({ grain }) => grain === "end"), ...edges.filter(({ grain }) => grain === "long")];
}

/** Count, area and length of edge of these panels. */
export function panelTotals(panels: readonly SizedPanel[]): PanelTotals {
  let totals: PanelTotals = { panels: 0, areaMm2: 0, edgeLengthMm: 0 };
  for (const { count, width, height } of panels) {
    totals = {
      panels: totals.panels + count,
      areaMm2: totals.areaMm2 + count * width.cutMm * height.cutMm,
      edgeLengthMm: totals.edgeLengthMm + 2 * count * (width.cutMm + height.cutMm),
    };
  }
  return totals;
}

/** One of each pair of opposite edges. */
function edgesOf({ width, height }: SizedPanel, { hasGrain }: Wood): PanelSide[] {
  return [width, height].map(({ cutMm, moves }) => ({
    lengthMm: cutMm,
    grain: hasGrain && moves === "across-grain" ? "end" : "long",
  }));
}
