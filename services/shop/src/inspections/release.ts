import { bitAfter } from "../bits/decide.ts";
import type { BitRecord } from "../bits/schema.ts";
import { Problem } from "../problems/problem.ts";
import type { Decision } from "../store/changes.ts";
import { GRAVE } from "./grave.ts";
import type { BitFinding, InspectionRecord } from "./schema.ts";

/** When a bit was at the sharpener's, and which damage was repaired there. */
type Repair = { readonly sharpenedAt: string; readonly repaired?: readonly BitFinding[] };

/**
 * Lets a held bit be used again. Somebody must have inspected it since it was held and found nothing that keeps it held; grave
 * damage must have been repaired since it was found.
 */
export function releaseBit(
  bit: BitRecord,
  inspections: readonly InspectionRecord[],
  repairs: readonly Repair[],
  at: string,
): Decision<BitRecord> {
  const { id, hold } = bit;
  if (hold === undefined) throw new Problem("invalid-state", `Bit ${id} is not held.`);
  const damage = GRAVE.find((finding) => isUnrepaired(finding, inspections, repairs));
  if (damage !== undefined) {
    const reason = `The ${NAMES[damage] ?? damage} of bit ${id} has not been repaired.`;
    throw new Problem("repair-needed", `${reason} Record a sharpening that repaired it, or retire the bit.`);
  }
  const isInspected = inspections.some(
    (each) => each.id !== hold.causeId && each.inspectedAt >= hold.since && each.effect === "note",
  );
  if (!isInspected) {
    throw new Problem(
      "inspection-needed",
      `Bit ${id} has not been inspected since it was held at ${hold.since}. Record an inspection, then release it.`,
    );
  }
  return bitAfter(bit, "released", { hold: undefined }, at);
}

const NAMES: { readonly [Finding in BitFinding]?: string } = {
  "cracked-braze": "cracked braze",
  bent: "bent shank",
};

function isUnrepaired(
  finding: BitFinding,
  inspections: readonly InspectionRecord[],
  repairs: readonly Repair[],
): boolean {
  return inspections.some(
    ({ findings, inspectedAt }) =>
      findings.includes(finding) &&
      !repairs.some(
        ({ sharpenedAt, repaired = [] }) => sharpenedAt >= inspectedAt && repaired.includes(finding),
      ),
  );
}
