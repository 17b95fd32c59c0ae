import type { App } from "../http/app-type.ts";
import { ref } from "../http/reference.ts";
import { pathOf } from "../problems/problem.ts";
import type { PlanAnswer } from "./answer-schema.ts";
import { planBatch } from "./batch.ts";
import {
  BATCH_SCHEMAS,
  PlanBatchAnswerSchema,
  PlanBatchSchema,
  ShopTableRequestSchema,
  ShopTableSchema,
} from "./batch-schema.ts";
import type { Sources } from "./gather.ts";
import { PlanQuery, type PlanQueryType, type PlanRequest } from "./schema.ts";
import { shopTable } from "./shop-table.ts";

/** A thousand requests that describe bit and router in place. */
const BATCH_BODY_LIMIT_BYTES = 2 * 1024 * 1024;

type Parts = {
  sources: Sources;
  plan: (request: PlanRequest, query: PlanQueryType) => Promise<PlanAnswer>;
};

export function planBatchRoutes(app: App, { sources, plan }: Parts): void {
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
      return planBatch(body.requests, validationError?.validation ?? [], (each) => plan(each, query), {
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
    (request) => shopTable(request.body, sources),
  );
}
