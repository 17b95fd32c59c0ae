import type { Policy } from "@rimwise/domain";
import { actorOf, callerOf, ownPersonOnly } from "../access/caller.ts";
import { bits } from "../bits/reads.ts";
import type { BitRecord } from "../bits/schema.ts";
import { requireColletOf } from "../collets/decide.ts";
import { collets } from "../collets/kind.ts";
import type { App } from "../http/app-type.ts";
import { withoutUndefined } from "../http/given.ts";
import { happenedAt } from "../http/moment.ts";
import { requireNamed, requireOne } from "../http/named-records.ts";
import { listRecordsRoute, readRoute } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { createRoute } from "../http/write-routes.ts";
import { loans } from "../loans/reads.ts";
import { plans } from "../plans/kind.ts";
import type { PlanRecord } from "../plans/schema.ts";
import { type FieldFault, notValid } from "../problems/problem.ts";
import { routers } from "../routers/kind.ts";
import { shopPolicy } from "../shop-policy/reads.ts";
import { newRecord } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import type { Question } from "../store/query.ts";
import { woods } from "../woods/reads.ts";
import { logUse } from "./decide.ts";
import { requireHoldLeft } from "./holds.ts";
import { useKind, uses } from "./kind.ts";
import { requirePlausible } from "./plausible.ts";
import {
  type NewUse,
  NewUseSchema,
  USE_SCHEMAS,
  UsePageSchema,
  type UseRecord,
  UseSchema,
} from "./schema.ts";

type Work = { readonly bitId: string; readonly routerId: string; readonly woodId: string };

/** A router has a few collets. */
const MOST_COLLETS = 1000;

const READ = { scope: "uses:read", tag: "uses", of: uses } as const;

export function useRoutes(app: App, doors: Doors): void {
  for (const schema of USE_SCHEMAS) app.addSchema(schema);

  listRecordsRoute(app, doors, {
    ...READ,
    path: "/v1/uses",
    operationId: "listUses",
    summary: "List what was done with bits. A member sees what they did themselves",
    page: UsePageSchema,
    filters: { bitId: "With this bit.", routerId: "In this router.", personId: "By this person." },
  });

  readRoute(app, doors, { ...READ, path: "/v1/uses/:useId", operationId: "getUse", summary: "Read a use" });

  createRoute(
    app,
    doors,
    {
      scope: "uses:write",
      tag: "uses",
      path: "/v1/uses",
      operationId: "createUse",
      summary: "Log work that was done; a bit that moved in its collet is held, and the collet with it",
      description:
        "Whoever is not in charge logs what they did themselves, of late, with a bit that is or was then on loan to them; without a loan they say why.",
      body: NewUseSchema,
      answer: UseSchema,
    },
    function* ({ body, request, at }) {
      const own = ownPersonOnly(request);
      const work = yield* workOf(body);
      const bit = yield* requireOne("/bitId", work.bitId, bits);
      yield* requireNamed([
        { pointer: "/routerId", id: work.routerId, of: routers },
        { pointer: "/colletId", id: body.colletId, of: collets },
        { pointer: "/woodId", id: work.woodId, of: woods },
      ]);
      if (body.colletId !== undefined) requireColletOf(work.routerId, yield* collets.find(body.colletId));
      const record = useRecord(work, body, callerOf(request).personId, at);
      const ofRouter = yield* collets.page("", MOST_COLLETS, { routerId: work.routerId });
      const policy = yield* shopPolicy();
      if (own !== undefined) yield* requireVouchedFor(record, own, bit, policy, at);
      return { changes: logUse(record, bit, ofRouter, actorOf(request), at, policy).changes, answer: record };
    },
  );
}

/** What somebody who is not in charge logs: their own work of late, with a bit they had or say why they used. */
function* requireVouchedFor(
  record: UseRecord,
  personId: string,
  bit: BitRecord,
  policy: Policy,
  at: string,
): Question<void> {
  requirePlausible(record, bit, policy, at);
  if (record.outcomes.includes("came-loose")) yield* requireHoldLeft(personId, at);
  if (record.withoutLoanReason !== undefined) return;
  if (yield* loans.isLentTo(personId, record.bitId, record.doneAt)) return;
  throw notValid([
    fault(
      "/withoutLoanReason",
      "The bit was not on loan to you.",
      "why you used it without a loan; or take the bit out first",
    ),
  ]);
}

/** What was worked with: what the plan says, or what the request does. */
function* workOf({ planId, bitId, routerId, woodId }: NewUse): Question<Work> {
  if (planId === undefined) return namedWork(bitId, routerId, woodId);
  const given = Object.entries({ bitId, routerId, woodId }).filter(([, value]) => value !== undefined);
  if (given.length > 0) {
    throw notValid(
      given.map(([name]) => fault(`/${name}`, "The plan says it.", "leave it out, or the planId")),
    );
  }
  return plannedWork(yield* requireOne("/planId", planId, plans));
}

function useRecord(work: Work, given: NewUse, personId: string | undefined, at: string): UseRecord {
  const { planId, colletId, notes, metres, minutes, outcomes, withoutLoanReason } = given;
  const doneAt = happenedAt(given.doneAt, at, "/doneAt");
  const fields = {
    ...work,
    planId,
    colletId,
    personId,
    doneAt,
    metres,
    minutes,
    outcomes,
    withoutLoanReason,
    notes,
  };
  return newRecord(newId(useKind.idPrefix), withoutUndefined(fields), at);
}

function namedWork(bitId?: string, routerId?: string, woodId?: string): Work {
  if (bitId !== undefined && routerId !== undefined && woodId !== undefined)
    return { bitId, routerId, woodId };
  const missing = Object.entries({ bitId, routerId, woodId }).filter(([, value]) => value === undefined);
  throw notValid(
    missing.map(([name]) => fault(`/${name}`, "It is needed.", "an id, or the planId of a stored plan")),
  );
}

function plannedWork({ id, request: { bit, router, woodId } }: PlanRecord): Work {
  if ("id" in bit && "id" in router) return { bitId: bit.id, routerId: router.id, woodId };
  const message = `Plan ${id} is for a bit or a router that is not kept here.`;
  throw notValid([fault("/planId", message, "a plan for a bit and a router of the shop")]);
}

function fault(pointer: string, message: string, accepted: string): FieldFault {
  return { in: "body", pointer, message, accepted };
}
