import { type PlanInput, type PolicyLayer, type Router, strictestPolicy, type Wood } from "@rimwise/domain";
import type { BitReads } from "../bits/reads.ts";
import type { BitRecord } from "../bits/schema.ts";
import { requireUsable } from "../bits/standing.ts";
import { type FieldFault, notValid } from "../problems/problem.ts";
import type { RouterReads } from "../routers/reads.ts";
import type { RouterRecord } from "../routers/schema.ts";
import type { WoodReads } from "../woods/reads.ts";
import { bitIn, historyFor, type Learned, type LearnedReads, trialsFor } from "./learned.ts";
import type { PlanRequest } from "./schema.ts";

export type Sources = {
  readonly bits: BitReads;
  readonly routers: RouterReads;
  readonly woods: WoodReads;
  readonly learned: LearnedReads;
  /** What the shop tightens for every plan. */
  readonly shopPolicy: () => Promise<PolicyLayer>;
  readonly now: () => Date;
};

export type KeptBit = { readonly record: BitRecord; readonly learned: Learned };
export type KeptRouter = { readonly record: RouterRecord; readonly usable: Router };

/**
 * The input of a plan: kept records with everything that was learned about them, names and notes left behind. Throws a problem
 * that names every record that does not exist, and one for a bit that is held or retired.
 */
export async function gatherInput(request: PlanRequest, sources: Sources): Promise<PlanInput> {
  const { bit: givenBit, router: givenRouter } = request;
  const keptBit = "id" in givenBit ? await loadBit(givenBit.id, sources) : undefined;
  const keptRouter = "id" in givenRouter ? await loadRouter(givenRouter.id, sources) : undefined;
  const wood = sources.woods.find(request.woodId);
  const faults = [
    ...("id" in givenBit && keptBit === undefined ? [BIT_MISSING] : []),
    ...("id" in givenRouter && keptRouter === undefined ? [ROUTER_MISSING] : []),
    ...(keptRouter === undefined ? [] : mountingFaults(request, keptRouter.record)),
  ];
  if (wood === undefined) faults.push(WOOD_MISSING);
  if (wood === undefined || faults.length > 0) throw notValid(faults);
  if (keptBit !== undefined) requireUsable(keptBit.record);
  const input = inputOf(request, {
    bit: keptBit,
    router: keptRouter,
    wood,
    layers: [await sources.shopPolicy()],
  });
  if (input === undefined) throw notValid(faults);
  return input;
}

/** What a request's ids stand for, and what tightens its policy beside itself. */
export type Known = {
  readonly bit: KeptBit | undefined;
  readonly router: KeptRouter | undefined;
  readonly wood: Wood;
  readonly layers: readonly PolicyLayer[];
};

/** The input of a plan from what is known; undefined where it names a bit or a router that is not there. Pure. */
export function inputOf(
  request: PlanRequest,
  { bit: keptBit, router: keptRouter, wood, layers }: Known,
): PlanInput | undefined {
  const router = "id" in request.router ? keptRouter?.usable : request.router;
  const bit =
    "id" in request.bit
      ? keptBit && bitIn(keptRouter?.record.id, keptBit.record, keptBit.learned)
      : request.bit;
  if (bit === undefined || router === undefined) return undefined;
  const { mounting, cut } = request;
  const policy = strictestPolicy(...layers, request.policy ?? {});
  return { bit, router, mounting, wood, cut, policy, ...warnings(request, keptBit, keptRouter, wood.id) };
}

/** A bit with what was learned about it, or undefined where there is none. */
export async function loadBit(id: string, { bits, learned, now }: Sources): Promise<KeptBit | undefined> {
  const record = await bits.find(id);
  return record && { record, learned: await learned.ofBit(id, now().toISOString()) };
}

/** A router as it can be used now, or undefined where there is none. */
export async function loadRouter(id: string, { routers, now }: Sources): Promise<KeptRouter | undefined> {
  const record = await routers.find(id);
  return record && { record, usable: await routers.usable(record, now().toISOString()) };
}

/** What is known beyond bit, router and wood: the trials given with the request and the shop's own, and earlier cuts. */
export function warnings(
  request: Pick<PlanRequest, "trials">,
  bit: KeptBit | undefined,
  router: KeptRouter | undefined,
  woodId: string,
): Pick<PlanInput, "trials" | "history"> {
  const trials = [...(request.trials ?? []), ...(bit ? trialsFor(router, bit.learned) : [])];
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
