import { creation } from "../store/changes.ts";
import type { Change } from "../store/port.ts";
import type { PlanAnswer } from "./answer-schema.ts";
import type { NewPlan, PlanRecord } from "./schema.ts";

/** A plan to keep, as it was computed. The event tells of it by digest and verdict; the plan itself never changes. */
export function keepPlan(
  id: string,
  { name, ...request }: NewPlan,
  plan: PlanAnswer,
  at: string,
): { readonly record: PlanRecord; readonly change: Change } {
  const kept = { id, version: 1, createdAt: at, updatedAt: at };
  const record = { ...kept, ...(name === undefined ? {} : { name }), request, plan };
  return { record, change: creation("plan", record, { id, digest: plan.digest, verdict: plan.verdict }) };
}
