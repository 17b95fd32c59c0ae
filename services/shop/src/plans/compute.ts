import { makePlan, planProfiles } from "@rimwise/domain";
import type { Question } from "../store/query.ts";
import type { PlanAnswer } from "./answer-schema.ts";
import { gatherInput } from "./gather.ts";
import { presentPlan } from "./present.ts";
import { presentProfiles } from "./present-profiles.ts";
import type { PlanQueryType, PlanRequest } from "./schema.ts";
import { sealOf } from "./seal.ts";
import { namingWasteBit } from "./waste-bit.ts";

/** When a plan is asked for, and whether by somebody who may see the rack. */
export type AskedBy = { readonly at: string; readonly mayReadBits: boolean };

/** The plan for a request at a moment, as it goes over the wire. */
export function* computedPlan(
  request: PlanRequest,
  { units, profiles = false }: PlanQueryType,
  { at, mayReadBits }: AskedBy,
): Question<PlanAnswer> {
  const input = yield* gatherInput(settableAs(request, units), at);
  const plan = makePlan(input);
  const named = mayReadBits ? yield* namingWasteBit(plan, input) : plan;
  const answer = presentPlan(named, input.wood, sealOf(input), units);
  return profiles ? { ...answer, profiles: presentProfiles(planProfiles(input, plan)) } : answer;
}

/** The request with what its settings are made by: as it says, else in the units that were asked for; metric if nothing says. */
export function settableAs<Request extends PlanRequest>(
  request: Request,
  units: PlanQueryType["units"],
): Request {
  return request.setIn !== undefined || units !== "imperial" ? request : { ...request, setIn: units };
}
