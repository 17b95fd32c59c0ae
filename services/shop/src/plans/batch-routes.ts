import type { Admit } from "../http/admission.ts";
import type { App } from "../http/app-type.ts";
import { ref } from "../http/reference.ts";
import { askedOf, type Doors, schemaOf } from "../http/routes.ts";
import { turnsOf } from "../http/turns.ts";
import { pathOf } from "../problems/problem.ts";
import { askedBy } from "./asked-by.ts";
import { planBatch } from "./batch.ts";
import {
  BATCH_OUTLINE,
  BATCH_SCHEMAS,
  BatchOrPartsSchema,
  type PlanBatch,
  PlanBatchSchema,
  ShopTableRequestSchema,
  ShopTableSchema,
} from "./batch-schema.ts";
import { computedPlan } from "./compute.ts";
import { partsOf } from "./parts.ts";
import { PlanQuery, type PlanQueryType, type PlanRequest, PlanRequestSchema } from "./schema.ts";
import { shopTable } from "./shop-table.ts";

/** A thousand requests that describe bit and router in place. */
const BATCH_BODY_LIMIT_BYTES = 2 * 1024 * 1024;

export function planBatchRoutes(app: App, doors: Doors, admit: Admit): void {
  const faultsIn = doors.validatorOf(ref(PlanRequestSchema));
  for (const schema of BATCH_SCHEMAS) app.addSchema(schema);

  const batch = {
    scope: "plans:compute",
    tag: "plans",
    path: "/v1/plans/preview-batch",
    operationId: "previewManyPlans",
    summary: "Compute up to 1,000 plans and keep nothing",
  } as const;
  app.post(
    batch.path,
    {
      // A request that cannot be read is its own problem, not the whole batch's: each is judged when it is computed.
      config: { scope: "plans:compute", operation: "act", bodyOutline: BATCH_OUTLINE },
      bodyLimit: BATCH_BODY_LIMIT_BYTES,
      schema: schemaOf(batch, {
        querystring: PlanQuery,
        body: ref(PlanBatchSchema),
        response: { 200: ref(BatchOrPartsSchema) },
      }),
    },
    (request, reply) =>
      admit(request, async () => {
        const at = doors.now().toISOString();
        const { body, query } = askedOf<typeof batch.path, PlanBatch, PlanQueryType>(request, at);
        const by = askedBy(request, at);
        const plan = async (each: PlanRequest) =>
          partsOf(await doors.answer(computedPlan(each, query, by)), query.fields);
        const fault = (err: unknown) => request.log.error({ err }, "one plan of a batch could not be made");
        const work = { faultsIn, plan, fault, turns: turnsOf(reply) };
        const text = await planBatch(body.requests, work, {
          requestId: request.id,
          instance: pathOf(request),
        });
        return reply.type("application/json; charset=utf-8").send(text);
      }),
  );

  app.post(
    "/v1/plans/shop-table",
    {
      config: { scope: "plans:compute", operation: "act" },
      schema: {
        operationId: "tabulatePlans",
        tags: ["plans"],
        summary: "Ceiling, mark and verdict of every bit in every router in every wood",
        body: ref(ShopTableRequestSchema),
        response: { 200: ref(ShopTableSchema) },
      },
    },
    (request, reply) => admit(request, () => shopTable(request.body, doors, turnsOf(reply))),
  );
}
