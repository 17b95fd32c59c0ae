import {
  angularSpeedRadPerS,
  balanceGradeMmPerS,
  boredDiscStressPa,
  gyroscopicCoupleNm,
  ringStressPa,
  rotatingForceN,
  STEEL_DENSITY_KG_PER_M3,
  STEEL_POISSON_RATIO,
  whirlFactor,
} from "../bit/rotation.ts";
import { storedEnergyJ } from "../bit/solid.ts";
import { clampedCriticalRpm } from "../limit/critical-speed.ts";
import type { LimitContext } from "../limit/limit.ts";
import { rimSpeedMPerS } from "../limit/rim-speed.ts";
import { STANDARD_GRAVITY_M_PER_S2 } from "../quantity/units.ts";

/** What spinning does to the bit at one speed, each figure at its safe edge. */
export type Rotation = {
  readonly rpm: number;
  readonly storedEnergyJ: number;
  /** Rotating force of the unbalance, with the swing it causes. */
  readonly unbalanceForceN: number;
  /** The same as a multiple of the bit's weight. */
  readonly unbalancePerWeightRatio: number;
  /** Eccentricity times angular speed (ISO 21940-11). */
  readonly balanceGradeMmPerS: number;
  /** First bending resonance, with what the collet gives. */
  readonly criticalSpeedRpm: number;
  /** Hoop stress of the rim as a thin steel ring, and of the body as a disc with a hole. */
  readonly rimStressMPa: number;
  readonly bodyStressMPa: number;
  /** Pull on one tip at the rim, and its energy if it came off. */
  readonly tipForceN: number;
  readonly tipEnergyJ: number;
  /** Couple with which it resists being tilted at 1 rad/s. */
  readonly gyroscopicCoupleNm: number;
};

const PA_PER_MPA = 1e6;

/** What spinning does at `rpm`: shown with every plan, limiting if a limit says so. */
export function rotationAt(context: LimitContext, rpm: number): Rotation {
  const { solid, policy, massHighG, runOutMm } = context;
  const inertiaKgM2 = solid.polarInertiaKgM2 * (massHighG / solid.massG);
  const rimMPerS = rimSpeedMPerS(2 * solid.rimRadiusMm, rpm);
  const criticalRpm = clampedCriticalRpm(context);
  const unbalanceForceN = rotatingForceN(massHighG, runOutMm / 2, rpm) * whirlFactor(rpm, criticalRpm);
  const tipMassKg = policy.tipMassAssumedG / 1000;
  return {
    rpm,
    storedEnergyJ: storedEnergyJ(inertiaKgM2, rpm),
    unbalanceForceN,
    unbalancePerWeightRatio: unbalanceForceN / ((massHighG / 1000) * STANDARD_GRAVITY_M_PER_S2),
    balanceGradeMmPerS: balanceGradeMmPerS(runOutMm / 2, rpm),
    criticalSpeedRpm: criticalRpm,
    rimStressMPa: ringStressPa(STEEL_DENSITY_KG_PER_M3, rimMPerS) / PA_PER_MPA,
    bodyStressMPa: boredDiscStressPa(STEEL_DENSITY_KG_PER_M3, STEEL_POISSON_RATIO, rimMPerS, 0) / PA_PER_MPA,
    tipForceN: tipMassKg * (solid.rimRadiusMm / 1000) * angularSpeedRadPerS(rpm) ** 2,
    tipEnergyJ: 0.5 * tipMassKg * rimMPerS * rimMPerS,
    gyroscopicCoupleNm: gyroscopicCoupleNm(inertiaKgM2, rpm, 1),
  };
}
