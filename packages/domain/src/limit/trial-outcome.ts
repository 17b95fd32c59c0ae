import type { Policy } from "../policy/policy.ts";
import { DomainError } from "../quantity/fault.ts";
import { rangeFaults } from "../quantity/range.ts";
import type { SpeedTrial } from "./trial.ts";

/** Accepted housing vibration velocity, r.m.s. */
export const VIBRATION_RANGE = { min: 0, max: 1000 } as const;

/**
 * What a measured trial comes to: at or under the policy's vibration in mm/s the bit ran free, above it it shook. Throws a
 * DomainError
 * (`/vibrationMmPerS`) for a figure that is not a vibration.
 * @example
 * trialOutcome(1.2, DEFAULT_POLICY) // → "ran-free"
 */
export function trialOutcome(
  vibrationMmPerS: number,
  { vibrationFreeMaxMmPerS }: Pick<Policy, "vibrationFreeMaxMmPerS">,
): SpeedTrial["outcome"] {
  const faults = rangeFaults("/vibrationMmPerS", vibrationMmPerS, VIBRATION_RANGE);
  if (faults.length > 0) throw new DomainError(faults);
  return vibrationMmPerS <= vibrationFreeMaxMmPerS ? "ran-free" : "shook";
}
