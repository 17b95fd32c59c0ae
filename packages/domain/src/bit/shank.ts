/** Young's modulus of hardened steel, Pa. Source: 190 to 210 GPa by grade (references §3); the round middle. */
export const STEEL_YOUNG_MODULUS_PA = 200e9;

/** A round shank clamped at the collet and loaded at a distance from it. */
export type Overhang = {
  readonly shankDiameterMm: number;
  /** From the collet face to the load or the centre of mass. */
  readonly lengthMm: number;
};

/** Second moment of area of a round section, mm⁴: I = π·d⁴/64. */
export function secondMomentMm4(diameterMm: number): number {
  return (Math.PI * diameterMm ** 4) / 64;
}

/**
 * Stiffness in N/m of the shank at the load, k = 3·E·I/L³: a cantilever with an end load (standard beam theory). A
 * rigid clamp is assumed, so this is an upper bound.
 * @example
 * stiffnessNPerM({ shankDiameterMm: 12.7, lengthMm: 30 }) / 1e6 // → 28.377
 */
export function stiffnessNPerM({ shankDiameterMm, lengthMm }: Overhang): number {
  const secondMomentM4 = secondMomentMm4(shankDiameterMm) * 1e-12;
  return (3 * STEEL_YOUNG_MODULUS_PA * secondMomentM4) / (lengthMm / 1000) ** 3;
}

/**
 * Deflection in mm at the load under a force in N, F/k with the stiffness k of `stiffnessNPerM`: a lower bound, for collet and
 * spindle give too.
 * @example
 * deflectionMm({ shankDiameterMm: 12.7, lengthMm: 30 }, 150) // → 0.0053
 */
export function deflectionMm(overhang: Overhang, forceN: number): number {
  return (forceN / stiffnessNPerM(overhang)) * 1000;
}

/**
 * Bending stress in MPa at the collet under a force in N, σ = 32·F·L/(π·d³) (standard beam theory).
 * @example
 * bendingStressMPa({ shankDiameterMm: 12.7, lengthMm: 30 }, 150) // → 22.377
 */
export function bendingStressMPa({ shankDiameterMm, lengthMm }: Overhang, forceN: number): number {
  return (32 * forceN * lengthMm) / (Math.PI * shankDiameterMm ** 3);
}

/**
 * Torsional stress in MPa in the shank under a torque in N·m, τ = 16·M/(π·d³) (standard).
 * @example
 * torsionStressMPa(12.7, 5) // → 12.432
 */
export function torsionStressMPa(shankDiameterMm: number, torqueNm: number): number {
  return (16 * torqueNm * 1000) / (Math.PI * shankDiameterMm ** 3);
}

/**
 * Equivalent stress in MPa of bending and torsion together, √(σ² + 3τ²) (von Mises, standard).
 * @example
 * equivalentStressMPa(30, 40) // → 75.498
 */
export function equivalentStressMPa(bendingMPa: number, torsionMPa: number): number {
  return Math.sqrt(bendingMPa * bendingMPa + 3 * torsionMPa * torsionMPa);
}

/**
 * First bending resonance in rpm of a mass on its overhung shank, ω = √(k/m) (standard). The rigid clamp makes
 * it an upper bound: collet and spindle give, and lower it.
 * @example
 * criticalSpeedRpm({ shankDiameterMm: 12.7, lengthMm: 30 }, 100) // → 160_863.5
 */
export function criticalSpeedRpm(overhang: Overhang, massG: number): number {
  return (Math.sqrt(stiffnessNPerM(overhang) / (massG / 1000)) * 60) / (2 * Math.PI);
}
