import { type Bit, type PlanInput, type Router, strictestPolicy, type Wood } from "@rimwise/domain";
import type { BitReads } from "../bits/reads.ts";
import type { BitRecord } from "../bits/schema.ts";
import { type FieldFault, notValid } from "../problems/problem.ts";
import type { RouterReads } from "../routers/reads.ts";
import type { RouterRecord } from "../routers/schema.ts";
import type { WoodReads } from "../woods/reads.ts";
import type { PlanRequest } from "./schema.ts";

export type Sources = { readonly bits: BitReads; readonly routers: RouterReads; readonly woods: WoodReads };

/** The input of a plan: kept records looked up, names and notes left behind. Throws a problem that names every one that does not exist. */
export async function gatherInput(request: PlanRequest, sources: Sources): Promise<PlanInput> {
  const [bit, router] = await Promise.all([bitOf(request, sources.bits), routerOf(request, sources.routers)]);
  const wood = sources.woods.find(request.woodId);
  const errors: FieldFault[] = [];
  if (bit === undefined)
    errors.push(missing("/bit/id", "bit", "the id of a bit of the rack, or a bit described here"));
  if (router === undefined) {
    errors.push(
      missing("/router/id", "router", "the id of a router of the shop, or a router described here"),
    );
  }
  if (wood === undefined) errors.push(missing("/woodId", "wood", "an id that GET /v1/woods lists"));
  if (bit === undefined || router === undefined || wood === undefined) {
    throw notValid(errors);
  }
  return inputFrom(request, bit, router, wood);
}

function inputFrom(request: PlanRequest, bit: Bit, router: Router, wood: Wood): PlanInput {
  const { mounting, cut, policy = {}, trials } = request;
  return { bit, router, mounting, wood, cut, policy: strictestPolicy(policy), ...(trials && { trials }) };
}

async function bitOf({ bit }: PlanRequest, bits: BitReads): Promise<Bit | undefined> {
  if (!("id" in bit)) return bit;
  const kept = await bits.find(bit.id);
  return kept && bareBit(kept);
}

async function routerOf({ router }: PlanRequest, routers: RouterReads): Promise<Router | undefined> {
  if (!("id" in router)) return router;
  const kept = await routers.find(router.id);
  return kept && bareRouter(kept);
}

/** A kept bit without what no plan depends on. */
export function bareBit({ id, name, notes, createdAt, updatedAt, version, ...bare }: BitRecord): Bit {
  return bare;
}

/** A kept router without what no plan depends on. */
export function bareRouter({
  id,
  name,
  notes,
  createdAt,
  updatedAt,
  version,
  ...bare
}: RouterRecord): Router {
  return bare;
}

function missing(pointer: string, what: string, accepted: string): FieldFault {
  return { in: "body", pointer, message: `There is no such ${what}.`, accepted };
}
