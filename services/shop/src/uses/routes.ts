import type { BitReads } from "../bits/reads.ts";
import type { AnswerOnce } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { etagOf } from "../http/conditional.ts";
import { happenedAt } from "../http/moment.ts";
import { requireColletOf, requireNamed, requireOne } from "../http/named-records.ts";
import { idFilter, listRoute, readRoute } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { stampOf } from "../http/write.ts";
import { callerOf, ownOrStaffs, ownPersonOnly, personAsked } from "../keys/caller.ts";
import type { PlanRecord } from "../plans/schema.ts";
import { type FieldFault, notValid } from "../problems/problem.ts";
import type { RouterReads } from "../routers/reads.ts";
import { newId } from "../store/id.ts";
import type { RecordReads } from "../store/record-reads.ts";
import type { WoodReads } from "../woods/reads.ts";
import { logUse } from "./decide.ts";
import {
  type NewUse,
  NewUseSchema,
  USE_SCHEMAS,
  UsePageSchema,
  type UseRecord,
  UseSchema,
} from "./schema.ts";

type Parts = {
  readonly reads: RecordReads<"use">;
  readonly bits: BitReads;
  readonly routers: RouterReads;
  readonly collets: RecordReads<"collet">;
  readonly plans: RecordReads<"plan">;
  readonly woods: WoodReads;
  readonly answerOnce: AnswerOnce;
  readonly now: () => Date;
};

type Work = { readonly bitId: string; readonly routerId: string; readonly woodId: string };

/** A router has a few collets. */
const MOST_COLLETS = 1000;

export function useRoutes(app: App, parts: Parts): void {
  const { reads, bits, routers, collets, plans, woods, answerOnce, now } = parts;
  for (const schema of USE_SCHEMAS) app.addSchema(schema);
  const common = { scope: "uses:read", tag: "uses" } as const;

  listRoute(
    app,
    {
      ...common,
      path: "/v1/uses",
      operationId: "listUses",
      summary: "List what was done with bits. A member sees what they did themselves",
      page: UsePageSchema,
      filters: {
        bitId: idFilter("With this bit."),
        routerId: idFilter("In this router."),
        personId: idFilter("By this person."),
      },
    },
    (afterId, most, { bitId, routerId, personId }, request) =>
      reads.page(afterId, most, { bitId, routerId, personId: personAsked(request, personId) }),
  );

  readRoute(
    app,
    {
      ...common,
      path: "/v1/uses/:useId",
      operationId: "getUse",
      summary: "Read a use",
      record: UseSchema,
      noun: "use",
      parameter: "useId",
    },
    async (id, request) => ownOrStaffs(request, await reads.find(id)),
  );

  app.post(
    "/v1/uses",
    {
      config: { scope: "uses:write", operation: "create" },
      schema: {
        operationId: "createUse",
        tags: ["uses"],
        summary: "Log work that was done; a bit that moved in its collet is held, and the collet with it",
        body: ref(NewUseSchema),
        response: { 201: ref(UseSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        const { body } = request;
        ownPersonOnly(request);
        const work = await workOf(body);
        const bit = await requireOne("/bitId", "bit", work.bitId, bits);
        await requireNamed([
          { pointer: "/routerId", noun: "router", id: work.routerId, reads: routers },
          { pointer: "/colletId", noun: "collet", id: body.colletId, reads: collets },
          {
            pointer: "/woodId",
            noun: "wood",
            id: work.woodId,
            reads: { find: async (id) => woods.find(id) },
          },
        ]);
        if (body.colletId !== undefined) requireColletOf(work.routerId, await collets.find(body.colletId));
        const stamp = stampOf(request, now());
        const record = useRecord(work, body, callerOf(request).personId, stamp.at);
        const ofRouter = await collets.page("", MOST_COLLETS, { routerId: work.routerId });
        const { changes } = logUse(record, bit, ofRouter, stamp.at);
        const headers = { Location: `/v1/uses/${record.id}`, ETag: etagOf(record.version) };
        return { stamp, changes, headers, body: record };
      }),
  );

  /** What was worked with: what the plan says, or what the request does. */
  async function workOf({ planId, bitId, routerId, woodId }: NewUse): Promise<Work> {
    if (planId === undefined) return namedWork(bitId, routerId, woodId);
    const given = Object.entries({ bitId, routerId, woodId }).filter(([, value]) => value !== undefined);
    if (given.length > 0) {
      throw notValid(
        given.map(([name]) => fault(`/${name}`, "The plan says it.", "leave it out, or the planId")),
      );
    }
    return plannedWork(await requireOne("/planId", "plan", planId, plans));
  }
}

function useRecord(work: Work, given: NewUse, personId: string | undefined, at: string): UseRecord {
  const { planId, colletId, notes, metres, minutes, outcomes } = given;
  return {
    id: newId("use"),
    ...work,
    ...(planId !== undefined && { planId }),
    ...(colletId !== undefined && { colletId }),
    ...(personId !== undefined && { personId }),
    doneAt: happenedAt(given.doneAt, at, "/doneAt"),
    metres,
    minutes,
    outcomes,
    ...(notes !== undefined && { notes }),
    createdAt: at,
    updatedAt: at,
    version: 1,
  };
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
