import { withoutUndefined } from "../http/given.ts";
import { creation, type Decision, newRecord } from "../store/changes.ts";
import type { PlanAnswer } from "./answer-schema.ts";
import { planKind } from "./kind.ts";
import type { NewPlan, PlanRecord } from "./schema.ts";

/** A plan to keep, as it was computed. The event names its digest and verdict; the plan itself never changes. */
export function keepPlan(
  id: string,
  { name, ...request }: NewPlan,
  plan: PlanAnswer,
  at: string,
): Decision<PlanRecord> {
  const record: PlanRecord = newRecord(id, withoutUndefined({ name, request, plan }), at);
  return {
    record,
    changes: [creation(planKind, record, { id, digest: plan.digest, verdict: plan.verdict })],
  };
}
