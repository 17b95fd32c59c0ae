import type { PlanInput, Policy, Wood } from "@rimwise/domain";
import { requireUsable } from "../bits/standing.ts";
import {
  bitIn,
  historyFor,
  type KnownBit,
  type KnownRouter,
  knownBit,
  knownRouter,
  trialsFor,
} from "../learned/learned.ts";
import { type Layers, policyInForce } from "../policy/in-force.ts";
import { type FieldFault, notValid } from "../problems/problem.ts";
import type { RouterRecord } from "../routers/schema.ts";
import { shopLayer } from "../shop-policy/reads.ts";
import type { Question } from "../store/query.ts";
import { woods } from "../woods/reads.ts";
import type { PlanRequest } from "./schema.ts";

/**
 * The input of a plan at a moment: kept records with everything that was learned about them, names and notes left behind.
 * Throws a problem that names every record that does not exist, and one for a bit that is held or retired.
 */
export function* gatherInput(request: PlanRequest, at: string): Question<PlanInput> {
  const { bit: givenBit, router: givenRouter } = request;
  const shop = yield* shopLayer();
  const policy = policyInForce(shop, request.policy ?? {});
  const bit = "id" in givenBit ? yield* knownBit(givenBit.id, at, policy) : undefined;
  const router = "id" in givenRouter ? yield* knownRouter(givenRouter.id, at, policy) : undefined;
  const wood = woods.find(request.woodId);
  const faults = [
    ...("id" in givenBit && bit === undefined ? [BIT_MISSING] : []),
    ...("id" in givenRouter && router === undefined ? [ROUTER_MISSING] : []),
    ...(router === undefined ? [] : mountingFaults(request, router.record)),
  ];
  if (wood === undefined) faults.push(WOOD_MISSING);
  if (wood === undefined || faults.length > 0) throw notValid(faults);
  if (bit !== undefined) requireUsable(bit.record);
  const input = inputOf(request, { bit, router, wood, layers: [shop] });
  if (input === undefined) throw notValid(faults);
  return input;
}

/** What a request's ids stand for, and what tightens its policy beside itself. */
export type Resolved = {
  readonly bit: KnownBit | undefined;
  readonly router: KnownRouter | undefined;
  readonly wood: Wood;
  readonly layers: Layers;
};

/** The input of a plan from what is known; undefined when it names a bit or a router that is not there. Pure. */
export function inputOf(
  request: PlanRequest,
  { bit: found, router: foundRouter, wood, layers }: Resolved,
): PlanInput | undefined {
  const router = "id" in request.router ? foundRouter?.usable : request.router;
  const bit =
    "id" in request.bit ? found && bitIn(foundRouter?.record.id, found.record, found.learned) : request.bit;
  if (bit === undefined || router === undefined) return undefined;
  const { mounting, cut, setIn } = request;
  const policy = policyInForce(...layers, request.policy ?? {});
  return {
    bit,
    router,
    mounting,
    wood,
    cut,
    policy,
    ...(setIn !== undefined && { setIn }),
    ...warnings(request, found, foundRouter, wood.id, policy),
  };
}

/** What is known beyond bit, router and wood: the trials given with the request and the shop's own, and earlier cuts. */
export function warnings(
  request: Pick<PlanRequest, "trials">,
  bit: KnownBit | undefined,
  router: KnownRouter | undefined,
  woodId: string,
  policy: Policy,
): Pick<PlanInput, "trials" | "history"> {
  const trials = [...(request.trials ?? []), ...(bit ? trialsFor(router, bit.learned, policy) : [])];
  const history = bit ? historyFor(router?.record.id, woodId, bit.record, bit.learned) : [];
  return { ...(trials.length > 0 && { trials }), ...(history.length > 0 && { history }) };
}

const BIT_MISSING = missing("/bit/id", "bit", "the id of a bit of the rack, or a bit described here");
const ROUTER_MISSING = missing(
  "/router/id",
  "router",
  "the id of a router of the shop, or a router described here",
);
const WOOD_MISSING = missing("/woodId", "wood", "an id that GET /v1/woods lists");

function mountingFaults({ mounting }: PlanRequest, { mountings }: RouterRecord): FieldFault[] {
  if (mountings === undefined || mountings.includes(mounting)) return [];
  const message = "This router cannot be used that way.";
  return [{ in: "body", pointer: "/mounting", message, accepted: `one of: ${mountings.join(", ")}` }];
}

function missing(pointer: string, what: string, accepted: string): FieldFault {
  return { in: "body", pointer, message: `There is no such ${what}.`, accepted };
}
