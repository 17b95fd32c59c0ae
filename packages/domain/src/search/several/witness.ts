import { type Curve, depthAtMm } from "../piece.ts";

/** A place on the wall that some cut must reach: a height and the depth needed there. */
export type Witness = { readonly zMm: number; readonly neededMm: number };

/** At most so many witnesses are kept at once: those taken at first, and those found to be missed. */
export const MOST_WITNESSES = 192;

/** Witnesses on each piece at first, by its share: close to its ends, where cuts begin and end, and between. */
const SHARES = [0.001, 0.05, 0.15, 0.3, 0.5, 0.7, 0.85, 0.95, 0.999] as const;

/** At first they are at most so many; of a wall with more pieces, fewer on each. */
const FIRST_WITNESSES = 128;

/** The witnesses that a search begins with. */
export function firstWitnesses(need: Curve): Witness[] {
  const every = Math.ceil((need.length * SHARES.length) / FIRST_WITNESSES);
  return need
    .flatMap((piece) =>
      SHARES.map((share) => {
        const zMm = piece.fromMm + share * (piece.toMm - piece.fromMm);
        return { zMm, neededMm: depthAtMm(piece, zMm) };
      }),
    )
    .filter((_, index) => index % every === 0);
}
