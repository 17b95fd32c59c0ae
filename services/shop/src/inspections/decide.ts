import { bitAfterUpkeep } from "../bits/decide.ts";
import type { BitRecord } from "../bits/schema.ts";
import type { InspectionPolicy } from "../bits/standing.ts";
import type { Hold, Retirement } from "../bits/state-schema.ts";
import { withoutUndefined } from "../http/given.ts";
import { happenedAt } from "../http/moment.ts";
import { notValid, Problem } from "../problems/problem.ts";
import { creation, type Decision, newRecord } from "../store/changes.ts";
import type { Change } from "../store/port.ts";
import type { UseRecord } from "../uses/schema.ts";
import { usesAfter } from "../uses/wear.ts";
import { GRAVE } from "./grave.ts";
import { inspectionKind } from "./kind.ts";
import type { InspectionRecord, NewInspection } from "./schema.ts";

/** A bit was looked at: the inspection, and what follows from it for the bit. `uses` are its latest ones. */
export function inspectBit(
  id: string,
  bit: BitRecord,
  uses: readonly UseRecord[],
  given: NewInspection,
  personId: string | undefined,
  at: string,
  policy: InspectionPolicy,
): Decision<InspectionRecord> {
  if (bit.retirement !== undefined) {
    throw new Problem("bit-not-usable", `Bit ${bit.id} is retired for good: ${bit.retirement.reason}`);
  }
  requireGravity(given);
  const inspectedAt = happenedAt(given.inspectedAt, at, "/inspectedAt");
  const { findings, effect, notes } = given;
  const fields = withoutUndefined({ bitId: bit.id, personId, findings, effect, notes, inspectedAt });
  const record: InspectionRecord = newRecord(id, fields, at);
  return {
    record,
    changes: [creation(inspectionKind, record), ...bitAfterInspection(bit, uses, record, at, policy)],
  };
}

/** One that is entered late has seen neither what was cut after it nor what a later one found. */
function bitAfterInspection(
  bit: BitRecord,
  uses: readonly UseRecord[],
  record: InspectionRecord,
  at: string,
  policy: InspectionPolicy,
): readonly Change[] {
  const { inspectedAt } = record;
  const metresSinceInspection = usesAfter(uses, inspectedAt).reduce((sum, { metres }) => sum + metres, 0);
  const isLatest = inspectedAt >= (bit.inspectedAt ?? "");
  const looked = isLatest ? { inspectedAt, used: { ...bit.used, metresSinceInspection } } : {};
  return bitAfterUpkeep(bit, "inspected", { ...looked, ...effectOf(record, at) }, at, policy).changes;
}

function effectOf(
  { id, effect, findings }: InspectionRecord,
  at: string,
): { readonly hold?: Hold; readonly retirement?: Retirement } {
  const reason = findings.length > 0 ? `Found: ${findings.join(", ")}.` : "Found unfit at an inspection.";
  switch (effect) {
    case "note":
      return {};
    case "hold":
      return { hold: { since: at, reason, cause: "inspection", causeId: id } };
    case "retire":
      return { retirement: { at, reason, isReplaced: false } };
  }
}

function requireGravity({ findings, effect }: NewInspection): void {
  const grave = findings.filter((finding) => GRAVE.includes(finding));
  if (effect !== "note" || grave.length === 0) return;
  const message = `With ${grave.join(" and ")} a bit must not stay in use.`;
  throw notValid([{ in: "body", pointer: "/effect", message, accepted: "hold or retire" }]);
}
