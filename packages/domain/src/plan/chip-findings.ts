import type { Policy } from "../policy/policy.ts";
import type { DialSetting } from "./dial-setting.ts";
import type { Finding } from "./findings.ts";
import type { PlannedPass } from "./planned-pass.ts";

/** A chip less than this many times the thinnest is near enough to it to scorch. Ours. */
const SCORCHES_WITHIN = 2;

/**
 * What the chosen feed does to the chip: too thin and the edge rubs (a floor under the feed that a hand cannot reach at this
 * speed), nearly so and it may scorch.
 */
export function chipFindings(
  passes: readonly PlannedPass[],
  { rpm, slowestEdgeMPerS }: DialSetting,
  { chipMeanMinMm }: Pick<Policy, "chipMeanMinMm">,
): Finding[] {
  let thinnest: PlannedPass | undefined;
  for (const planned of passes) {
    if (thinnest === undefined || planned.load.chipMeanMm < thinnest.load.chipMeanMm) thinnest = planned;
  }
  if (thinnest === undefined) return [];
  const { pass } = thinnest;
  const { chipMeanMm } = thinnest.load;
  if (chipMeanMm < chipMeanMinMm) {
    // At one feed the chip thickens as the speed falls.
    const speedForChipRpm = (rpm * chipMeanMm) / chipMeanMinMm;
    const { number } = pass;
    return [
      { code: "thin-chip", severity: "care", pass: number, chipMeanMm, chipMeanMinMm, speedForChipRpm },
    ];
  }
  if (chipMeanMm >= SCORCHES_WITHIN * chipMeanMinMm) return [];
  return [{ code: "burn-risk", severity: "note", chipMeanMm, slowestEdgeMPerS }];
}
