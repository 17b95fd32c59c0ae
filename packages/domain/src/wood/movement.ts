import { DomainError } from "../quantity/fault.ts";
import { type Range, rangeFaults } from "../quantity/range.ts";
import type { GrainDirection, Species } from "./wood.ts";

/** A piece across the grain and the moisture it goes from and to. */
export type MoistureChange = {
  readonly sizeMm: number;
  readonly fromMoisturePercent: number;
  readonly toMoisturePercent: number;
};

/** What can be answered: no wood moves above fibre saturation, taken as 30 %. Source: Wood Handbook p. 13-16. */
export const MOVEMENT_RANGES = {
  sizeMm: { min: 0, max: 10_000 },
  moisturePercent: { min: 0, max: 30 },
} as const satisfies Readonly<Record<string, Range>>;

/** Moisture contents in % between which the change is taken as even. Source: Wood Handbook p. 13-16. */
export const EVEN_RANGE: Range = { min: 6, max: 14 };
/** The moisture content at which a shrinkage and a coefficient say the same, %. */
const AGREE_AT_PERCENT = 10;

/**
 * Change in mm of a piece of this species across the grain; positive when it swells. Inside 6 to 14 % eq. (13-2), outside
 * it eq. (13-3). Commercial boards are neither flat nor quartersawn throughout, so widths move less and thicknesses more than this.
 * Source: Wood Handbook pp. 13-16 and 13-17. Throws a DomainError outside `MOVEMENT_RANGES`.
 * White fir, tangential, 232 mm from 8 to 11 %: 1.7 mm.
 */
export function movementMm(species: Species, direction: GrainDirection, change: MoistureChange): number {
  const { sizeMm, fromMoisturePercent, toMoisturePercent } = change;
  const faults = [
    ...rangeFaults("/sizeMm", sizeMm, MOVEMENT_RANGES.sizeMm),
    ...rangeFaults("/fromMoisturePercent", fromMoisturePercent, MOVEMENT_RANGES.moisturePercent),
    ...rangeFaults("/toMoisturePercent", toMoisturePercent, MOVEMENT_RANGES.moisturePercent),
  ];
  if (faults.length > 0) throw new DomainError(faults);
  if (isEven(fromMoisturePercent) && isEven(toMoisturePercent)) {
    return evenMovementMm(change, species.changeCoefficient[direction].value);
  }
  return movementByShrinkageMm(
    change,
    shrinkagePercentOf(species, direction),
    species.shrinkageStartsAtPercent,
  );
}

/** Eq. (13-2): ΔD = D_I·C·(M_F − M_I), in mm; good from 6 to 14 %. */
export function evenMovementMm(
  { sizeMm, fromMoisturePercent, toMoisturePercent }: MoistureChange,
  changeCoefficient: number,
): number {
  return sizeMm * changeCoefficient * (toMoisturePercent - fromMoisturePercent);
}

/** Eq. (13-3): ΔD = D_I·(M_F − M_I)/(M_0·100/S − M_0 + M_I), in mm, if shrinkage S in % starts at M_0, 30 or 22 %. */
export function movementByShrinkageMm(
  { sizeMm, fromMoisturePercent, toMoisturePercent }: MoistureChange,
  shrinkagePercent: number,
  startsAtPercent: Species["shrinkageStartsAtPercent"],
): number {
  const percentForWholeSize =
    (startsAtPercent * 100) / shrinkagePercent - startsAtPercent + fromMoisturePercent;
  return (sizeMm * (toMoisturePercent - fromMoisturePercent)) / percentForWholeSize;
}

/** C = S/(100·M_0 − (M_0 − 10)·S): eq. (13-3) at 10 % for a shrinkage S in % that starts at M_0. */
export function coefficientFromShrinkage(
  shrinkagePercent: number,
  startsAtPercent: Species["shrinkageStartsAtPercent"],
): number {
  return shrinkagePercent / (100 * startsAtPercent - (startsAtPercent - AGREE_AT_PERCENT) * shrinkagePercent);
}

/** The published shrinkage, or the one its coefficient stands for if none is published. */
function shrinkagePercentOf(species: Species, direction: GrainDirection): number {
  if (species.shrinkagePercent !== undefined) return species.shrinkagePercent[direction].value;
  const { value } = species.changeCoefficient[direction];
  const start = species.shrinkageStartsAtPercent;
  return (100 * start * value) / (1 + (start - AGREE_AT_PERCENT) * value);
}

function isEven(moisturePercent: number): boolean {
  return moisturePercent >= EVEN_RANGE.min && moisturePercent <= EVEN_RANGE.max;
}
