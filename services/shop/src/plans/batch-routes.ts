import type { App } from "../http/app-type.ts";
import { ref } from "../http/reference.ts";
import type { Doors } from "../http/routes.ts";
import { pathOf } from "../problems/problem.ts";
import { planBatch } from "./batch.ts";
import {
  BATCH_SCHEMAS,
  PlanBatchAnswerSchema,
  PlanBatchSchema,
  ShopTableRequestSchema,
  ShopTableSchema,
} from "./batch-schema.ts";
import { computedPlan } from "./compute.ts";
import { PlanQuery, type PlanRequest } from "./schema.ts";
import { shopTable } from "./shop-table.ts";

/** A thousand requests that describe bit and router in place. */
const BATCH_BODY_LIMIT_BYTES = 2 * 1024 * 1024;

export function planBatchRoutes(app: App, doors: Doors): void {
  for (const schema of BATCH_SCHEMAS) app.addSchema(schema);

  app.post(
    "/v1/plans/preview-batch",
    {
      config: { scope: "plans:compute", operation: "act" },
      bodyLimit: BATCH_BODY_LIMIT_BYTES,
      // A request that cannot be read is its own problem, not the whole batch's.
      attachValidation: true,
      schema: {
        operationId: "previewManyPlans",
        tags: ["plans"],
        summary: "Compute up to 1,000 plans and keep nothing",
        querystring: PlanQuery,
        body: ref(PlanBatchSchema),
        response: { 200: ref(PlanBatchAnswerSchema) },
      },
    },
    (request) => {
      const { validationError, body, query } = request;
      if (validationError !== undefined && validationError.validationContext !== "body")
        throw validationError;
      const at = doors.now().toISOString();
      const plan = (each: PlanRequest) => doors.answer(computedPlan(each, query, at));
      return planBatch(body.requests, validationError?.validation ?? [], plan, {
        requestId: request.id,
        instance: pathOf(request),
      });
    },
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
    (request) => shopTable(request.body, doors),
  );
}
