import { lighterFenceMm, type SetIn } from "./settable.ts";

/**
 * The runs, side by side, of a cut that is wider than the bit: a rabbet's by the fence of each, a groove's by how far each lies over
 * from the first.
 */
export type Runs =
  | { readonly by: "fence"; readonly fencesMm: readonly number[] }
  | { readonly by: "move"; readonly overMm: readonly number[] };

/** Each run overlaps the one before by this share of the bit, and by this much at least, mm. Ours: no ridge is left between them. */
const OVERLAP_RATIO = 0.1;
const LEAST_OVERLAP_MM = 0.5;

/**
 * The fences in mm of a rabbet so wide, from the work's edge inward; undefined if one run makes it. The axis lies the bit's radius less
 * the width behind the fence face (geometry). Every run but the last ends where a person can set it, on the lighter side.
 */
export function rabbetRuns(radiusMm: number, widthMm: number, setIn: SetIn | undefined): Runs | undefined {
  if (widthMm <= 2 * radiusMm) return undefined;
  const count = Math.ceil(widthMm / newWoodMm(radiusMm));
  const fencesMm = Array.from({ length: count - 1 }, (_, index) =>
    lighterFenceMm(radiusMm - (widthMm * (index + 1)) / count, setIn),
  );
  return { by: "fence", fencesMm: [...fencesMm, radiusMm - widthMm] };
}

/** How far each run of a groove so wide lies over from the first, mm; undefined if one run makes it. */
export function grooveRuns(radiusMm: number, widthMm: number, setIn: SetIn | undefined): Runs | undefined {
  const overMm = widthMm - 2 * radiusMm;
  if (overMm <= 0) return undefined;
  const count = Math.ceil(overMm / newWoodMm(radiusMm));
  const between = Array.from(
    { length: count - 1 },
    // Nearer to the first run is the lighter side.
    (_, index) => -lighterFenceMm((-overMm * (index + 1)) / count, setIn),
  );
  return { by: "move", overMm: [0, ...between, overMm] };
}

/** The widest run of a rabbet: its frame is that of an edge cut so wide, mm. */
export function widestRunMm(radiusMm: number, fencesMm: readonly number[]): number {
  let fromMm = radiusMm;
  let widestMm = 0;
  for (const fenceMm of fencesMm) {
    widestMm = Math.max(widestMm, fromMm - fenceMm);
    fromMm = fenceMm;
  }
  return widestMm;
}

/** The fence at which one setting of the bit would make the whole width: where the last run ends. For drawing. */
export function wholeFenceMm(fenceMm: number, runs: Runs | undefined): number {
  if (runs === undefined) return fenceMm;
  return runs.by === "fence" ? (runs.fencesMm.at(-1) ?? fenceMm) : fenceMm - (runs.overMm.at(-1) ?? 0) / 2;
}

function newWoodMm(radiusMm: number): number {
  return 2 * radiusMm - Math.max(2 * radiusMm * OVERLAP_RATIO, LEAST_OVERLAP_MM);
}
