/**
 * How a number came here. `looked-up`: read on the source itself. `looked-up-secondary`: read on a page that quotes the source.
 * `derived`: computed from such numbers. `memory`: remembered, or computed from a remembered number; not checked.
 */
export type Provenance = "looked-up" | "looked-up-secondary" | "derived" | "memory";

/** A number and how it came here. */
export type Sourced = { readonly value: number; readonly provenance: Provenance };

/** Across the grain: `radial` is the width of a quartersawn board, `tangential` that of a flatsawn one. */
export type GrainDirection = "radial" | "tangential";

/** What a bit cuts: solid wood that moves with moisture, or a made material that is taken as still. */
export type Wood = Species | Sheet | Plastic;

export type Species = WoodNature & {
  readonly kind: "species";
  /** Name in kebab-case, such as `black-cherry`. */
  readonly id: string;
  readonly name: string;
  readonly botanicalName: string;
  readonly group: "domestic-hardwood" | "domestic-softwood" | "imported";
  /** Density at 12 % moisture content. */
  readonly densityKgPerM3: Sourced;
  /** Force to press an 11.28 mm ball in to half its diameter, into the side grain. */
  readonly sideHardnessN: Sourced;
  /** Change in size, as a ratio of the size, for one percent of moisture content. */
  readonly changeCoefficient: Readonly<Record<GrainDirection, Sourced>>;
  /** Shrinkage from green to oven-dry; absent if no published figure agrees with the coefficients. */
  readonly shrinkagePercent?: Readonly<Record<GrainDirection, Sourced>>;
  /** Moisture content at which shrinkage is taken to start. */
  readonly shrinkageStartsAtPercent: 30 | 22;
  readonly note?: string;
};

/** What every wood and material says of itself. */
export type WoodNature = {
  /** Whether its edges differ by direction: end grain tears, and breaks out at a corner. */
  readonly hasGrain: boolean;
  /** Whether it softens and sticks to a bit that rubs instead of cutting. */
  readonly isMeltable: boolean;
};

export type Sheet = MadeMaterial & { readonly kind: "sheet" };
export type Plastic = MadeMaterial & { readonly kind: "plastic" };

type MadeMaterial = WoodNature & {
  readonly id: string;
  readonly name: string;
  readonly densityKgPerM3: Sourced;
  /** What else is known of it, and how. */
  readonly note: string;
};
