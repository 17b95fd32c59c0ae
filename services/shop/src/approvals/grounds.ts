import { type Policy, type PolicyLayer, woodById } from "@rimwise/domain";
import { courses } from "../courses/kind.ts";
import { type KnownBit, type KnownRouter, knownBit, knownRouter } from "../learned/learned.ts";
import type { PlanRequest } from "../plans/schema.ts";
import { type Layers, policyInForce } from "../policy/in-force.ts";
import { shopLayer } from "../shop-policy/reads.ts";
import type { Question } from "../store/query.ts";
import type { Grounds } from "./result.ts";

/** What approvals rest on, as it is at a moment. */
export type GroundsNow = (
  request: PlanRequest,
  woodIds: readonly string[],
  courseId: string,
) => Question<Grounds>;

/** Looks up what approvals rest on. What several share is read once, so begin again after a change. */
export function groundsAt(at: string): GroundsNow {
  // Most changes touch nothing that an approval rests on: then it is never read.
  let shop: PolicyLayer | undefined;
  // What was measured is relied on as long as the shop and the course allow. Equal layers give the same policy.
  const known = new Map<Policy, ReturnType<typeof lookupsUnder>>();
  const lookups = (policy: Policy) => {
    const found = known.get(policy) ?? lookupsUnder(policy, at);
    known.set(policy, found);
    return found;
  };
  const policyOf = once<PolicyLayer>(function* (id) {
    return (yield* courses.find(id))?.policy ?? {};
  });
  return function* (request, woodIds, courseId) {
    shop ??= yield* shopLayer();
    const layers: Layers = [shop, yield* policyOf(courseId)];
    const { bitOf, routerOf } = lookups(policyInForce(...layers));
    return {
      request,
      bit: "id" in request.bit ? yield* bitOf(request.bit.id) : undefined,
      router: "id" in request.router ? yield* routerOf(request.router.id) : undefined,
      layers,
      woods: woodIds.flatMap((id) => woodById(id) ?? []),
    };
  };
}

/** Lookups of bits and routers as they are known under a policy. */
function lookupsUnder(policy: Policy, at: string) {
  return {
    bitOf: once<KnownBit | undefined>((id) => knownBit(id, at, policy)),
    routerOf: once<KnownRouter | undefined>((id) => knownRouter(id, at, policy)),
  };
}

/** A lookup that is made once for each id. */
function once<Value>(look: (id: string) => Question<Value>): (id: string) => Question<Value> {
  const known = new Map<string, { readonly value: Value }>();
  return function* (id) {
    const found = known.get(id) ?? { value: yield* look(id) };
    known.set(id, found);
    return found.value;
  };
}
