import Type from "typebox";
import type { AnswerOnce } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { etagOf, requireMatch } from "../http/conditional.ts";
import { requireNamed, unknownRecord } from "../http/named-records.ts";
import { notACursor, sendPage } from "../http/paging.ts";
import { readRoute, requireFound } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { stampOf, type Write } from "../http/write.ts";
import { notValid } from "../problems/problem.ts";
import type { RouterReads } from "../routers/reads.ts";
import { newId } from "../store/id.ts";
import type { RecordReads } from "../store/record-reads.ts";
import { changeBit, createBit, removeBit } from "./decide.ts";
import { BitListQuery, bitFilter } from "./list-query.ts";
import { BitPath } from "./path.ts";
import type { BitReads } from "./reads.ts";
import { BIT_SCHEMAS, BitChangeSchema, BitPageSchema, BitSchema, NewBitSchema } from "./schema.ts";

type Parts = {
  readonly reads: BitReads;
  readonly routers: RouterReads;
  readonly places: RecordReads<"place">;
  readonly write: Write;
  readonly answerOnce: AnswerOnce;
  readonly now: () => Date;
};

export function bitRoutes(app: App, { reads, routers, places, write, answerOnce, now }: Parts): void {
  for (const schema of BIT_SCHEMAS) app.addSchema(schema);

  app.get(
    "/v1/bits",
    {
      config: { scope: "bits:read", operation: "list" },
      schema: {
        operationId: "listBits",
        tags: ["bits"],
        summary: "List or search the bits on the rack; every filter combines",
        querystring: BitListQuery,
        response: { 200: ref(BitPageSchema) },
      },
    },
    async (request, reply) => {
      const { fitsRouterId, limit, cursor } = request.query;
      const fits = fitsRouterId === undefined ? undefined : await routerAsked(fitsRouterId);
      const filter = bitFilter(request.query, fits);
      const ask = { limit, ...(cursor !== undefined && { cursor }) };
      const page = await sendPage(request, reply, ask, (after, most) =>
        reads.search(numberAfter(after), most, filter),
      );
      return { ...page, data: page.data.map(({ record }) => record) };
    },
  );

  app.post(
    "/v1/bits",
    {
      config: { scope: "bits:write", operation: "create" },
      schema: {
        operationId: "createBit",
        tags: ["bits"],
        summary: "Put a bit on the rack",
        body: ref(NewBitSchema),
        response: { 201: ref(BitSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        await requirePlace(request.body.homePlaceId);
        const stamp = stampOf(request, now());
        const { record, change } = createBit(newId("bit"), request.body, stamp.at);
        const headers = { Location: `/v1/bits/${record.id}`, ETag: etagOf(record.version) };
        return { stamp, changes: [change], headers, body: record };
      }),
  );

  readRoute(
    app,
    {
      path: "/v1/bits/:bitId",
      scope: "bits:read",
      tag: "bits",
      operationId: "getBit",
      summary: "Read a bit",
      record: BitSchema,
      noun: "bit",
      parameter: "bitId",
    },
    reads.find,
  );

  app.patch(
    "/v1/bits/:bitId",
    {
      config: { scope: "bits:write", operation: "change" },
      schema: {
        operationId: "updateBit",
        tags: ["bits"],
        summary: "Change a bit",
        params: BitPath,
        body: ref(BitChangeSchema),
        response: { 200: ref(BitSchema) },
      },
    },
    async (request, reply) => {
      const { bitId } = request.params;
      const current = requireFound("bit", bitId, await reads.find(bitId));
      requireMatch(request, current.version);
      await requirePlace(request.body.homePlaceId);
      const stamp = stampOf(request, now());
      const { record, change } = changeBit(current, request.body, stamp.at);
      await write({ stamp, changes: [change] });
      reply.header("ETag", etagOf(record.version));
      return record;
    },
  );

  app.delete(
    "/v1/bits/:bitId",
    {
      config: { scope: "bits:write", operation: "remove" },
      schema: {
        operationId: "deleteBit",
        tags: ["bits"],
        summary: "Take a bit off the rack; one that is on loan must come back first",
        params: BitPath,
        response: { 204: Type.Null({ description: "It is gone; its last state stays in the events." }) },
      },
    },
    async (request, reply) => {
      const { bitId } = request.params;
      const current = requireFound("bit", bitId, await reads.find(bitId));
      requireMatch(request, current.version);
      await write({ stamp: stampOf(request, now()), changes: [removeBit(current)] });
      return reply.code(204).send(null);
    },
  );

  async function routerAsked(id: string) {
    const router = await routers.find(id);
    if (router !== undefined) return routers.usable(router, now().toISOString());
    throw notValid([unknownRecord("/fitsRouterId", "router", "query")]);
  }

  function requirePlace(placeId: string | null | undefined): Promise<void> {
    return requireNamed([
      { pointer: "/homePlaceId", noun: "place", id: placeId ?? undefined, reads: places },
    ]);
  }
}

/** The number of the bit that a page goes on from; 0 for the first page. */
function numberAfter(cursor: string): number {
  const number = Number(cursor);
  if (!Number.isSafeInteger(number)) throw notACursor();
  return number;
}
