import type { PanelMachine, PanelsInput } from "@rimwise/domain";
import { withoutUndefined } from "../http/given.ts";
import { gatherInput } from "../plans/gather.ts";
import { policyInForce } from "../policy/in-force.ts";
import { type FieldFault, notValid } from "../problems/problem.ts";
import { shopLayer } from "../shop-policy/reads.ts";
import type { Question } from "../store/query.ts";
import { woods } from "../woods/reads.ts";
import type { PanelsRequest } from "./schema.ts";

/** What panels are sized from, and the machine their edges are cut on if a bit was named. */
export type Gathered = { readonly input: PanelsInput; readonly machine: PanelMachine | undefined };

const REQUIRED_WITH_BIT: Readonly<Record<"bit" | "router" | "mounting", string>> = {
  bit: "the id of a bit of the rack, or a bit described here",
  router: "the id of a router of the shop, or a router described here",
  mounting: "one of: table, handheld",
};

/** Kept records and the wood looked up. Throws a problem that names every one that is missing or does not exist. */
export function* gatherPanels(request: PanelsRequest, at: string): Question<Gathered> {
  const {
    bit,
    router,
    mounting,
    heightMm,
    fenceMm,
    trials,
    woodId,
    policy = {},
    openings,
    ...same
  } = request;
  const asked = { ...same, openings: openings.map(({ name, ...opening }) => opening) };
  if (bit !== undefined && router !== undefined && mounting !== undefined) {
    const { cut, ...machine } = yield* gatherInput(
      // The edges follow from the sizes.
      { bit, router, mounting, woodId, cut: { kind: "panel", edges: [] }, policy, ...(trials && { trials }) },
      at,
    );
    const setting = withoutUndefined({ heightMm, fenceMm });
    const { wood, policy: strictest } = machine;
    return { input: { ...asked, wood, bit: machine.bit, ...setting, policy: strictest }, machine };
  }
  if ([bit, router, mounting, heightMm, fenceMm, trials].some((field) => field !== undefined)) {
    throw notValid(missingFrom(request));
  }
  const wood = woods.find(woodId);
  if (wood === undefined) {
    const accepted = "an id that GET /v1/woods lists";
    throw notValid([{ in: "body", pointer: "/woodId", message: "There is no such wood.", accepted }]);
  }
  return {
    input: { ...asked, wood, policy: policyInForce(yield* shopLayer(), policy) },
    machine: undefined,
  };
}

/** A bit is of use only with a router and a way to hold it, and the other settings only with a bit. */
function missingFrom(request: PanelsRequest): FieldFault[] {
  const names = ["bit", "router", "mounting"] as const;
  return names
    .filter((name) => request[name] === undefined)
    .map((name) => ({
      in: "body",
      pointer: `/${name}`,
      message: "Bit, router and mounting are given together, or none of what concerns them.",
      accepted: REQUIRED_WITH_BIT[name],
    }));
}
