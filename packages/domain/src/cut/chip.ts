/** The chip one tooth takes, for a cut `immersionRatio` = a_e/D deep. */
export type Chip = {
  /** Angle of contact, φ = acos(1 − 2a). */
  readonly contactRad: number;
  readonly meanMm: number;
  readonly greatestMm: number;
};

/**
 * The chip of one tooth: true mean along the arc f_z·2a/φ (not the shop approximation f_z·√a, which is
 * 57 % high in a slot) and greatest thickness 2·f_z·√(a(1−a)), or f_z from half immersion on. Source: geometry of the
 * circular tooth path (standard). Immersion is from just above 0 to 1 (a slot).
 * @example
 * chipOf(0.1, 0.5).meanMm // → 0.0637
 */
export function chipOf(feedPerToothMm: number, immersionRatio: number): Chip {
  const a = Math.min(1, immersionRatio);
  const contactRad = Math.acos(1 - 2 * a);
  return {
    contactRad,
    meanMm: (feedPerToothMm * 2 * a) / contactRad,
    greatestMm: a >= 0.5 ? feedPerToothMm : 2 * feedPerToothMm * Math.sqrt(a * (1 - a)),
  };
}

/**
 * How much faster to feed for the same greatest chip in a shallow cut: 1/(2√(a(1−a))), 1 from half immersion on. The immersion
 * is from just above 0 to 1. Source: geometry of the circular tooth path (standard).
 * @example
 * chipThinningFactor(0.1) // → 1.667
 */
export function chipThinningFactor(immersionRatio: number): number {
  const a = Math.min(1, immersionRatio);
  return a >= 0.5 ? 1 : 1 / (2 * Math.sqrt(a * (1 - a)));
}
