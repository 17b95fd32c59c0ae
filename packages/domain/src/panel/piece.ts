import { WORK_FIELDS, type Work } from "../cut/work.ts";
import type { Wood } from "../wood/wood.ts";
import type { SizedPanel } from "./size-panel.ts";

/**
 * The piece that is held while the edges of these panels are cut: how large it is as far as they are all alike, and how many there are. Of
 * a material without grain no side is the length.
 */
export function panelPiece(panels: readonly SizedPanel[], thicknessMm: number, { hasGrain }: Wood): Work {
  const alongGrainMm = panels.map(({ width, height }) => sideMm(width, height, "along-grain"));
  const acrossGrainMm = panels.map(({ width, height }) => sideMm(width, height, "across-grain"));
  const lengthMm = hasGrain ? theOne(alongGrainMm) : undefined;
  const widthMm = hasGrain ? theOne(acrossGrainMm) : undefined;
  const count = panels.reduce((sum, panel) => sum + panel.count, 0);
  const areAlike = lengthMm !== undefined && widthMm !== undefined;
  return {
    thicknessMm,
    ...(lengthMm !== undefined && { lengthMm }),
    ...(widthMm !== undefined && { widthMm }),
    ...(areAlike && count <= WORK_FIELDS.count.max && { count }),
  };
}

function sideMm(
  width: SizedPanel["width"],
  height: SizedPanel["height"],
  moves: SizedPanel["width"]["moves"],
): number | undefined {
  return [width, height].find((side) => side.moves === moves)?.cutMm;
}

/** What all of them say, if they say the same. */
function theOne(sizesMm: readonly (number | undefined)[]): number | undefined {
  const [first] = sizesMm;
  return sizesMm.every((size) => size === first) ? first : undefined;
}
