/** Density of steel, kg/m³. Source: 7 850, the handbook examples of references §3. */
export const STEEL_DENSITY_KG_PER_M3 = 7850;

/** Poisson's ratio of steel. Source: 0.29 to 0.3 (references §3). */
export const STEEL_POISSON_RATIO = 0.3;

/**
 * Angular speed in rad/s of a speed in rpm: ω = 2π·n/60.
 * @example
 * angularSpeedRadPerS(12_000) // → 1256.637
 */
export function angularSpeedRadPerS(rpm: number): number {
  return (rpm * 2 * Math.PI) / 60;
}

/**
 * Speed in rpm of an angular speed in rad/s: n = 60·ω/2π.
 * @example
 * rpmOf(100 * Math.PI) // → 3000.0
 */
export function rpmOf(omegaRadPerS: number): number {
  return (omegaRadPerS * 60) / (2 * Math.PI);
}

/**
 * Force in N that a mass in g, off the axis by an eccentricity in mm, pulls with: F = m·e·ω² (mechanics, standard).
 * @example
 * rotatingForceN(340, 0.025, 12_000) // → 13.423
 */
export function rotatingForceN(massG: number, eccentricityMm: number, rpm: number): number {
  const omegaRadPerS = angularSpeedRadPerS(rpm);
  return (massG / 1000) * (eccentricityMm / 1000) * omegaRadPerS * omegaRadPerS;
}

/**
 * Balance grade in mm/s that an eccentricity reaches at a speed: G = e·ω (ISO 21940-11).
 * @example
 * balanceGradeMmPerS(0.025, 12_000) // → 31.416
 */
export function balanceGradeMmPerS(eccentricityMm: number, rpm: number): number {
  return eccentricityMm * angularSpeedRadPerS(rpm);
}

/**
 * Hoop stress in Pa of a thin ring at a rim speed: σ = ρ·v² (Mechanical Engineer's Data Handbook §1.2.7, p. 15).
 * @example
 * ringStressPa(STEEL_DENSITY_KG_PER_M3, 56) // → 24_617_600
 */
export function ringStressPa(densityKgPerM3: number, rimSpeedMPerS: number): number {
  return densityKgPerM3 * rimSpeedMPerS * rimSpeedMPerS;
}

/**
 * Greatest stress in Pa of a solid disc, at its centre: σ = ρ·v²·(3 + ν)/8 (the same page).
 * @example
 * solidDiscStressPa(STEEL_DENSITY_KG_PER_M3, 0.3, 56) / 1e6 // → 10.155
 */
export function solidDiscStressPa(
  densityKgPerM3: number,
  poissonRatio: number,
  rimSpeedMPerS: number,
): number {
  return (ringStressPa(densityKgPerM3, rimSpeedMPerS) * (3 + poissonRatio)) / 8;
}

/**
 * Greatest stress in Pa of a disc with a bore, at the bore: σ = ρ·v²/4·((3 + ν) + (1 − ν)·(r_i/r_o)²) (handbook of calculations
 * eq. 3.44, p. 150). A pin hole gives twice the solid disc's.
 * @example
 * boredDiscStressPa(STEEL_DENSITY_KG_PER_M3, 0.3, 56, 0.1) / 1e6 // → 20.353
 */
export function boredDiscStressPa(
  densityKgPerM3: number,
  poissonRatio: number,
  rimSpeedMPerS: number,
  boreRatio: number,
): number {
  const bore = (1 - poissonRatio) * boreRatio * boreRatio;
  return (ringStressPa(densityKgPerM3, rimSpeedMPerS) * (3 + poissonRatio + bore)) / 4;
}

/**
 * Couple in N·m that resists turning a spinning body's axis: C = I·ω·ω_p (mechanics, standard).
 * @example
 * gyroscopicCoupleNm(0.000_25, 12_000, 1) // → 0.314
 */
export function gyroscopicCoupleNm(polarInertiaKgM2: number, rpm: number, turnRadPerS: number): number {
  return polarInertiaKgM2 * angularSpeedRadPerS(rpm) * turnRadPerS;
}

/**
 * How much farther than its eccentricity a mass on a flexible shaft runs out: 1/|1 − r²| with r = n/n_critical (Jeffcott
 * rotor, standard). Infinite at the critical speed.
 * @example
 * whirlFactor(10_000, 20_000) // → 1.333
 */
export function whirlFactor(rpm: number, criticalRpm: number): number {
  const ratio = rpm / criticalRpm;
  return 1 / Math.abs(1 - ratio * ratio);
}

/**
 * Speed in rpm at which a mass in g, off the axis by an eccentricity in mm, above 0, pulls with a force in N when its shaft swings
 * too: F = m·e·ω²/(1 − (n/n_critical)²) solved for n, 1/n² = 1/n₀² + 1/n_critical² with n₀ the speed of a stiff shaft (Jeffcott
 * rotor, standard). Always below the critical speed.
 * @example
 * rpmAtSwingingForce(13.423, { massG: 340, eccentricityMm: 0.025, criticalRpm: 40_000 }) // → 11_494.05
 */
export function rpmAtSwingingForce(
  forceN: number,
  {
    massG,
    eccentricityMm,
    criticalRpm,
  }: { readonly massG: number; readonly eccentricityMm: number; readonly criticalRpm: number },
): number {
  const stiffRpm = rpmOf(Math.sqrt(forceN / ((massG / 1000) * (eccentricityMm / 1000))));
  return 1 / Math.sqrt(1 / (stiffRpm * stiffRpm) + 1 / (criticalRpm * criticalRpm));
}
