import type { Admit } from "../http/admission.ts";
import type { App } from "../http/app-type.ts";
import { askRoute } from "../http/ask-routes.ts";
import { findVisible, listShownRoute, readShownRoute } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { actRoute, createRoute } from "../http/write-routes.ts";
import { newId } from "../store/id.ts";
import { askedBy } from "./asked-by.ts";
import { planBatchRoutes } from "./batch-routes.ts";
import { computedPlan, settableAs } from "./compute.ts";
import { correctPlan, previewedCorrection } from "./correct.ts";
import { keepPlan, summaryOf } from "./decide.ts";
import { planKind, plans } from "./kind.ts";
import { PlanOrPartsSchema, partsOf } from "./parts.ts";
import {
  CorrectionRequestSchema,
  NewPlanSchema,
  PLAN_FILTERS,
  PLAN_SCHEMAS,
  PlanPageSchema,
  PlanQuery,
  PlanRequestSchema,
  StoredPlanOrPartsSchema,
  StoredPlanQuery,
  StoredPlanSchema,
  UnitsQuery,
} from "./schema.ts";
import { CorrectionSchema, TestPieceSchema } from "./test-piece-schema.ts";

const READ = { scope: "plans:read", tag: "plans", of: plans } as const;

export function planRoutes(app: App, doors: Doors, admit: Admit): void {
  for (const schema of PLAN_SCHEMAS) app.addSchema(schema);
  planBatchRoutes(app, doors, admit);

  askRoute(
    app,
    doors,
    {
      scope: "plans:compute",
      tag: "plans",
      path: "/v1/plans/preview",
      operationId: "previewPlan",
      summary: "Compute a plan and keep nothing",
      query: PlanQuery,
      body: PlanRequestSchema,
      answer: PlanOrPartsSchema,
    },
    function* ({ body, query, at, request }) {
      return partsOf(yield* computedPlan(body, query, askedBy(request, at)), query.fields);
    },
  );

  askRoute(
    app,
    doors,
    {
      scope: "plans:compute",
      tag: "plans",
      path: "/v1/plans/preview-correction",
      operationId: "previewCorrection",
      summary: "Correct the setting of a plan by what was measured on its test piece, and keep nothing",
      query: UnitsQuery,
      body: CorrectionRequestSchema,
      answer: CorrectionSchema,
    },
    function* ({ body: { measured, cutAt, ...asked }, query, at, request }) {
      const plan = yield* computedPlan(asked, query, askedBy(request, at));
      const written = { mounting: asked.mounting, units: query.units ?? asked.setIn, at };
      return previewedCorrection(plan, measured, cutAt, written);
    },
  );

  listShownRoute(
    app,
    doors,
    {
      ...READ,
      path: "/v1/plans",
      operationId: "listPlans",
      summary: "List the stored plans in short",
      page: PlanPageSchema,
      filters: PLAN_FILTERS,
    },
    summaryOf,
  );

  createRoute(
    app,
    doors,
    {
      scope: "plans:write",
      tag: "plans",
      path: "/v1/plans",
      operationId: "createPlan",
      summary: "Compute a plan and keep it",
      // Polygons are for drawing once; what is kept is what was decided.
      query: UnitsQuery,
      body: NewPlanSchema,
      answer: StoredPlanSchema,
    },
    function* ({ body, query, at, request }) {
      // What is kept says how it is set: a plan is the same for everybody who reads it.
      const asked = settableAs(body, query.units);
      const plan = yield* computedPlan(asked, query, askedBy(request, at));
      const { record, changes } = keepPlan(newId(planKind.idPrefix), asked, plan, at);
      return { changes, answer: record };
    },
  );

  actRoute(
    app,
    doors,
    {
      scope: "plans:write",
      tag: "plans",
      of: plans,
      path: "/v1/plans/:planId/corrections",
      operationId: "correctPlan",
      summary: "Correct the setting of a stored plan by what was measured on its test piece",
      body: TestPieceSchema,
      answer: StoredPlanSchema,
    },
    (plan, { body, at }) => {
      const { record, changes } = correctPlan(plan, body, at);
      return { changes, answer: record };
    },
  );

  readShownRoute(
    app,
    doors,
    {
      ...READ,
      path: "/v1/plans/:planId",
      operationId: "getPlan",
      summary: "Read a stored plan",
      query: StoredPlanQuery,
      answer: StoredPlanOrPartsSchema,
    },
    function* (id, asked) {
      const stored = yield* findVisible(plans)(id, asked);
      return stored && { ...stored, plan: partsOf(stored.plan, asked.query.fields) };
    },
  );
}
