import type { ProfilePoint } from "../../bit/profile.ts";
import { depthAtMm } from "../piece.ts";
import { placeOf } from "../setting.ts";
import type { Target } from "../target.ts";
import type { Presentation } from "../wanted.ts";

/** A place that some cut must reach: x from the edge, z from the front face, however the work is presented. */
export type Witness = ProfilePoint;

/** At most so many witnesses are kept at once: those taken at first, and those found to be missed. */
export const MOST_WITNESSES = 192;

/** Witnesses on each piece at first, by its share: close to its ends, where cuts begin and end, and between. */
const SHARES = [0.001, 0.05, 0.15, 0.3, 0.5, 0.7, 0.85, 0.95, 0.999] as const;

/** At first they are at most so many; of walls with more pieces, fewer on each. */
const FIRST_WITNESSES = 128;

/** The witnesses that a search begins with: on what must go, as each target shows it. */
export function firstWitnesses(targets: readonly Target[], thicknessMm: number): Witness[] {
  const all = targets.flatMap(({ wall, need }) =>
    need.flatMap((piece) =>
      SHARES.map((share) => {
        const heightMm = piece.fromMm + share * (piece.toMm - piece.fromMm);
        return placeOf(wall, thicknessMm, { heightMm, depthMm: depthAtMm(piece, heightMm) });
      }),
    ),
  );
  const every = Math.ceil(all.length / FIRST_WITNESSES);
  return all.filter((_, index) => index % every === 0);
}

/** A place as a presentation shows it: its height above the table, and how deep it lies. */
export function seenIn({ work, face }: Presentation, { xMm, zMm }: Witness, thicknessMm: number) {
  if (work === "flat") return { heightMm: zMm, depthMm: xMm };
  return { heightMm: xMm, depthMm: face === "front" ? zMm : thicknessMm - zMm };
}
