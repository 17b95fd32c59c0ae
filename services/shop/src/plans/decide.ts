import { withoutUndefined } from "../http/given.ts";
import { creation, type Decision, newRecord } from "../store/changes.ts";
import type { PlanAnswer } from "./answer-schema.ts";
import { planKind } from "./kind.ts";
import type { NewPlan, PlanRecord, PlanSummary } from "./schema.ts";

/** A plan to keep, as it was computed. The event names its digest and verdict; what was computed never changes. */
export function keepPlan(
  id: string,
  { name, externalId, ...request }: NewPlan,
  plan: PlanAnswer,
  at: string,
): Decision<PlanRecord> {
  const record: PlanRecord = newRecord(id, withoutUndefined({ name, externalId, request, plan }), at);
  return {
    record,
    changes: [creation(planKind, record, { id, digest: plan.digest, verdict: plan.verdict })],
  };
}

/** A stored plan as lists show it. */
export function summaryOf({ request, plan, ...kept }: PlanRecord): PlanSummary {
  const { id, name, externalId, createdAt, updatedAt, version } = kept;
  const { bit, router, mounting, woodId, cut } = request;
  return withoutUndefined({
    id,
    name,
    externalId,
    bitId: "id" in bit ? bit.id : undefined,
    routerId: "id" in router ? router.id : undefined,
    mounting,
    woodId,
    cutKind: cut.kind,
    verdict: plan.verdict,
    mark: plan.speed.mark,
    rpm: plan.speed.rpm,
    passes: plan.passes.length,
    createdAt,
    updatedAt,
    version,
  });
}
