import type { Policy } from "@rimwise/domain";
import { daysAfter } from "../http/moment.ts";
import { Problem } from "../problems/problem.ts";
import type { BitRecord } from "./schema.ts";
import type { BitStanding, BitState } from "./state-schema.ts";

/** What says how often a bit is inspected. */
export type InspectionPolicy = Pick<Policy, "inspectionIntervalDays" | "inspectionIntervalM">;

/** Where a new bit stands: in its place, never used, to be inspected one interval from now. */
export function newStanding(
  bit: Pick<BitRecord, "homePlaceId" | "inspectionIntervalDays">,
  at: string,
  policy: InspectionPolicy,
): BitStanding {
  return {
    state: "in-rack",
    ...(bit.homePlaceId !== undefined && { placeId: bit.homePlaceId }),
    inspectionDueAt: daysAfter(at, intervalDays(bit, policy)),
    used: {
      uses: 0,
      metres: 0,
      minutes: 0,
      metresSinceInspection: 0,
      equivalentMetresSinceSharpening: 0,
    },
  };
}

/** A bit whose state follows from what is known of it: the gravest of several reasons wins. */
export function settled(bit: BitRecord): BitRecord {
  const state = stateOf(bit);
  return state === bit.state ? bit : { ...bit, state };
}

/**
 * When an inspection is due: after its days, or from when it had cut its metres. Never for a bit that is retired.
 */
export function inspectionDue(
  bit: BitRecord,
  at: string,
  policy: InspectionPolicy,
): { readonly inspectionDueAt?: string } {
  if (bit.retirement !== undefined) return {};
  const byDays = daysAfter(bit.inspectedAt ?? bit.createdAt, intervalDays(bit, policy));
  if (!hasCutItsMetres(bit, policy)) return { inspectionDueAt: byDays };
  const [inspectionDueAt = byDays] = [byDays, at, bit.inspectionDueAt ?? at].sort();
  return { inspectionDueAt };
}

/** Whether a bit has cut all it may between inspections. */
export function hasCutItsMetres(
  { used, inspectionIntervalM = Number.POSITIVE_INFINITY }: BitRecord,
  policy: InspectionPolicy,
): boolean {
  return used.metresSinceInspection >= Math.min(inspectionIntervalM, policy.inspectionIntervalM);
}

/** Whether a bit may get a plan, a trial and a loan: it is neither held nor retired. */
export function isUsable({ hold, retirement }: Pick<BitRecord, "hold" | "retirement">): boolean {
  return hold === undefined && retirement === undefined;
}

/** Refuses a bit that is held or retired: it gets no plan, no trial and no loan. */
export function requireUsable({ id, hold, retirement }: BitRecord): void {
  if (retirement !== undefined) {
    throw new Problem("bit-not-usable", `Bit ${id} is retired: ${retirement.reason}`);
  }
  if (hold !== undefined) {
    throw new Problem(
      "bit-not-usable",
      `Bit ${id} is held: ${hold.reason} Somebody in charge must inspect and release it first.`,
    );
  }
}

function stateOf({ retirement, hold, sentToSharpeningAt, loanId }: BitRecord): BitState {
  if (retirement !== undefined) return "retired";
  if (hold !== undefined) return "held";
  if (sentToSharpeningAt !== undefined) return "at-sharpening";
  return loanId === undefined ? "in-rack" : "on-loan";
}

/** A bit's own interval may be shorter than the policy's, never longer. */
function intervalDays(
  { inspectionIntervalDays = Number.POSITIVE_INFINITY }: Pick<BitRecord, "inspectionIntervalDays">,
  policy: InspectionPolicy,
): number {
  return Math.min(inspectionIntervalDays, policy.inspectionIntervalDays);
}
