import { boredDiscStressPa, STEEL_DENSITY_KG_PER_M3, STEEL_POISSON_RATIO } from "../bit/rotation.ts";
import { defineLimit } from "./limit.ts";
import { rpmAtRimSpeed } from "./rim-speed.ts";

/** The body as a disc with a pin hole: slots and brazed seats double a solid disc's stress. */
const PIN_HOLE_RATIO = 0;

/** Stress that spinning puts into the body, as a steel disc with a hole. */
export const bodyStress = defineLimit({
  name: "body-stress",
  strength: "hard",
  formula: "σ = ρ·v²·(3 + ν)/4 ≤ allowed",
  source: "disc with a bore, handbook of calculations eq. 3.44; the stress allowed is ours",
  figure: ({ solid, policy: { bodyStressMaxMPa } }) => {
    const diameterMm = 2 * solid.rimRadiusMm;
    const atOneMPerS = boredDiscStressPa(STEEL_DENSITY_KG_PER_M3, STEEL_POISSON_RATIO, 1, PIN_HOLE_RATIO);
    const rimSpeedMPerS = Math.sqrt((bodyStressMaxMPa * 1e6) / atOneMPerS);
    return { rpm: rpmAtRimSpeed(diameterMm, rimSpeedMPerS), values: { diameterMm, bodyStressMaxMPa } };
  },
  raisedBy: () => ({ code: "smaller-bit" }),
});
