import { ENGINE_VERSION, makePlan, type Plan, type PlanInput, planSections } from "@rimwise/domain";
import { type DrawnUnits, PICTURES, type Scene } from "@rimwise/drawing";
import { visibleTo } from "../access/caller.ts";
import { bits } from "../bits/reads.ts";
import type { BitRecord } from "../bits/schema.ts";
import type { App } from "../http/app-type.ts";
import { requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { settableAs } from "../plans/compute.ts";
import { gatherInput } from "../plans/gather.ts";
import { plans } from "../plans/kind.ts";
import { type PlanRecord, type PlanRequest, PlanRequestSchema } from "../plans/schema.ts";
import { sealOf } from "../plans/seal.ts";
import { Problem } from "../problems/problem.ts";
import { routers } from "../routers/kind.ts";
import type { RouterRecord } from "../routers/schema.ts";
import type { Question } from "../store/query.ts";
import { pictureRoute } from "./picture-route.ts";

/** What can be seen of a plan, what is set first. */
export const PLAN_PICTURES = ["set-up", "limits", "bit"] as const;

type PlanPicture = (typeof PLAN_PICTURES)[number];

export function planPictureRoutes(app: App, doors: Doors): void {
  pictureRoute(
    app,
    doors,
    {
      scope: "plans:read",
      tag: "plans",
      path: "/v1/plans/:planId/picture",
      operationId: "getPlanPicture",
      summary: "A stored plan at the machine, or what limits it; refused once it would be another plan",
      kinds: PLAN_PICTURES,
    },
    ({ params: { planId }, query: { kind, units }, request, at }) =>
      doors.answer(
        (function* () {
          const record = requireFound(plans.kind, planId, yield* visibleTo(request, plans).find(planId));
          return planScene(yield* keptPlan(record, at), kind, record.name ?? "", units);
        })(),
      ),
  );

  pictureRoute(
    app,
    doors,
    {
      scope: "plans:compute",
      tag: "plans",
      path: "/v1/plans/picture",
      operationId: "drawPlan",
      summary: "The same of a plan that is computed and not kept",
      kinds: PLAN_PICTURES,
      body: PlanRequestSchema,
    },
    ({ body, query: { kind, units }, at }) =>
      doors.answer(
        (function* () {
          const planned = yield* plannedFor(settableAs(body, units), at);
          return planScene(planned, kind, yield* nameOf(body), units);
        })(),
      ),
  );
}

/** A plan with what it was computed from. */
export type Planned = { readonly input: PlanInput; readonly plan: Plan };

/** The plan for a request at a moment. */
export function* plannedFor(request: PlanRequest, at: string): Question<Planned> {
  const input = yield* gatherInput(request, at);
  return { input, plan: makePlan(input) };
}

/** A stored plan as it was computed. Throws a problem when it would not be the same any more: nobody must cut by it. */
export function* keptPlan({ id, request, plan }: PlanRecord, at: string): Question<Planned> {
  const planned = yield* plannedFor(request, at);
  if (sealOf(planned.input).digest === plan.digest && plan.engineVersion === ENGINE_VERSION) return planned;
  throw new Problem(
    "result-changed",
    `What plan ${id} was computed from has changed since. Plan the cut again.`,
  );
}

/** A picture of a plan. */
export function planScene(
  { input, plan }: Planned,
  kind: PlanPicture,
  name: string,
  units: DrawnUnits,
): Scene {
  switch (kind) {
    case "set-up":
      return PICTURES["set-up"].draw({ input, plan, name, units });
    case "limits":
      return PICTURES.limits.draw({ plan, name, units });
    case "bit": {
      const setting = planSections(input, plan)?.settings.at(-1);
      const { setting: speed } = plan.speed;
      return PICTURES.bit.draw({
        bit: input.bit,
        name,
        units,
        ...(setting && { setting }),
        ...(speed && { rpm: speed.rpm }),
      });
    }
  }
}

/** What the shop calls the bit and the router of a request, as far as it keeps them. */
function* nameOf(request: PlanRequest): Question<string> {
  const { bit, router } = yield* keptIn(request);
  return [bit?.name, router?.name].filter((name) => name !== undefined).join(", ");
}

/** The bit and the router of a request, as far as the shop keeps them. */
export function* keptIn({ bit, router }: PlanRequest): Question<{
  readonly bit: BitRecord | undefined;
  readonly router: RouterRecord | undefined;
}> {
  return {
    bit: "id" in bit ? yield* bits.find(bit.id) : undefined,
    router: "id" in router ? yield* routers.find(router.id) : undefined,
  };
}
