import { makePlan, planProfiles } from "@rimwise/domain";
import type { AnswerOnce } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { etagOf } from "../http/conditional.ts";
import { listRoute, readRoute } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { stampOf } from "../http/write.ts";
import { newId } from "../store/id.ts";
import type { RecordReads } from "../store/record-reads.ts";
import { type PlanAnswer, PlanAnswerSchema } from "./answer-schema.ts";
import { planBatchRoutes } from "./batch-routes.ts";
import { keepPlan } from "./decide.ts";
import { gatherInput, type Sources } from "./gather.ts";
import { presentPlan } from "./present.ts";
import { presentProfiles } from "./present-profiles.ts";
import {
  NewPlanSchema,
  PLAN_SCHEMAS,
  PlanPageSchema,
  PlanQuery,
  type PlanQueryType,
  type PlanRequest,
  PlanRequestSchema,
  StoredPlanSchema,
} from "./schema.ts";
import { sealOf } from "./seal.ts";

type Parts = { reads: RecordReads<"plan">; sources: Sources; answerOnce: AnswerOnce; now: () => Date };

export function planRoutes(app: App, { reads, sources, answerOnce, now }: Parts): void {
  for (const schema of PLAN_SCHEMAS) app.addSchema(schema);
  planBatchRoutes(app, { sources, plan: (request, query) => planned(request, sources, query) });

  app.post(
    "/v1/plans/preview",
    {
      config: { scope: "plans:compute", operation: "act" },
      schema: {
        operationId: "previewPlan",
        tags: ["plans"],
        summary: "Compute a plan and keep nothing",
        querystring: PlanQuery,
        body: ref(PlanRequestSchema),
        response: { 200: ref(PlanAnswerSchema) },
      },
    },
    (request) => planned(request.body, sources, request.query),
  );

  const common = { scope: "plans:read", tag: "plans" } as const;

  listRoute(
    app,
    {
      ...common,
      path: "/v1/plans",
      operationId: "listPlans",
      summary: "List the stored plans",
      page: PlanPageSchema,
    },
    (afterId, most) => reads.page(afterId, most),
  );

  app.post(
    "/v1/plans",
    {
      config: { scope: "plans:write", operation: "create" },
      schema: {
        operationId: "createPlan",
        tags: ["plans"],
        summary: "Compute a plan and keep it",
        querystring: PlanQuery,
        body: ref(NewPlanSchema),
        response: { 201: ref(StoredPlanSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        const stamp = stampOf(request, now());
        const plan = await planned(request.body, sources, request.query);
        const { record, change } = keepPlan(newId("plan"), request.body, plan, stamp.at);
        const headers = { Location: `/v1/plans/${record.id}`, ETag: etagOf(record.version) };
        return { stamp, changes: [change], headers, body: record };
      }),
  );

  readRoute(
    app,
    {
      ...common,
      path: "/v1/plans/:planId",
      operationId: "getPlan",
      summary: "Read a stored plan",
      record: StoredPlanSchema,
      noun: "plan",
      parameter: "planId",
    },
    reads.find,
  );
}

async function planned(
  request: PlanRequest,
  sources: Sources,
  { units, profiles }: PlanQueryType,
): Promise<PlanAnswer> {
  const input = await gatherInput(request, sources);
  const plan = makePlan(input);
  const answer = presentPlan(plan, input.wood, sealOf(input), units);
  return profiles ? { ...answer, profiles: presentProfiles(planProfiles(input, plan)) } : answer;
}
