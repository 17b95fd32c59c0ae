import { planCard, showIn } from "@rimwise/domain";
import { type PlanNamed, planSheet } from "@rimwise/drawing";
import { visibleTo } from "../access/caller.ts";
import type { App } from "../http/app-type.ts";
import { requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { keptIn, keptPlan, type Planned, plannedFor } from "../pictures/plans.ts";
import { settableAs } from "../plans/compute.ts";
import { plans } from "../plans/kind.ts";
import { type PlanRequest, PlanRequestSchema } from "../plans/schema.ts";
import { sealOf } from "../plans/seal.ts";
import type { Question } from "../store/query.ts";
import type { PrintQuery } from "./print-query.ts";
import { type Printed, printRoute } from "./print-route.ts";

export function planPrintRoutes(app: App, doors: Doors): void {
  printRoute(
    app,
    doors,
    {
      scope: "plans:read",
      tag: "plans",
      path: "/v1/plans/:planId/printout",
      operationId: "getPlanPrintout",
      summary: "A stored plan on paper, to lie at the machine; refused once it would be another plan",
      usualPaper: "a5",
    },
    ({ params: { planId }, query, request, at }) =>
      doors.answer(
        (function* () {
          const record = requireFound(plans.kind, planId, yield* visibleTo(request, plans).find(planId));
          const named = yield* namedPlan(yield* keptPlan(record, at), record.request);
          return printed(
            named,
            record.name ?? nameOf(named),
            `${record.id}, by engine ${record.plan.engineVersion}`,
            query,
          );
        })(),
      ),
  );

  printRoute(
    app,
    doors,
    {
      scope: "plans:compute",
      tag: "plans",
      path: "/v1/plans/printout",
      operationId: "printPlan",
      summary: "The same of a plan that is computed and not kept",
      usualPaper: "a5",
      body: PlanRequestSchema,
    },
    ({ body, query, at }) =>
      doors.answer(
        (function* () {
          const named = yield* namedPlan(yield* plannedFor(settableAs(body, query.units), at), body);
          return printed(named, nameOf(named), madeFrom(named), query);
        })(),
      ),
  );
}

/** A plan with what the shop calls its bit and its router, and what it remarks of the bit. */
function* namedPlan({ input, plan }: Planned, request: PlanRequest): Question<PlanNamed> {
  const { bit, router } = yield* keptIn(request);
  return {
    input,
    plan,
    ...(bit && { bitName: bit.name }),
    ...(router && { routerName: router.name }),
    ...(bit?.notes !== undefined && { notes: [bit.notes] }),
  };
}

function printed(named: PlanNamed, name: string, made: string, { paper, units }: PrintQuery): Printed {
  return {
    pages: () => planSheet({ ...named, name, madeFrom: made, units, paper }),
    card: () => planCard(name, named.plan, showIn(units), made),
  };
}

/** A plan that nobody named is called by its bit and router. */
function nameOf({ bitName, routerName }: PlanNamed): string {
  const names = [bitName, routerName].filter((each) => each !== undefined);
  return names.length === 0 ? "A cut" : names.join(", ");
}

/** As much of a digest as tells two plans apart by eye. */
const DIGEST_SHOWN = 23;

function madeFrom({ input }: PlanNamed): string {
  const { digest, engineVersion } = sealOf(input);
  return `${digest.slice(0, DIGEST_SHOWN)}… by engine ${engineVersion}`;
}
