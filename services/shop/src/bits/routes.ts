import { dialSpeeds } from "@rimwise/domain";
import { viewerOf } from "../access/caller.ts";
import type { App } from "../http/app-type.ts";
import { askRoute } from "../http/ask-routes.ts";
import { requireNamed, unknownRecord } from "../http/named-records.ts";
import { notACursor, sendPage } from "../http/paging.ts";
import { readRoute, requireFound } from "../http/read-routes.ts";
import { ref } from "../http/reference.ts";
import type { Doors } from "../http/routes.ts";
import { changeRoute, createRoute, removeRoute } from "../http/write-routes.ts";
import { places } from "../places/reads.ts";
import { notValid } from "../problems/problem.ts";
import { routers } from "../routers/kind.ts";
import { shopPolicy } from "../shop-policy/reads.ts";
import { newId } from "../store/id.ts";
import type { Question } from "../store/query.ts";
import { usableRouter } from "../usable-routers/reads.ts";
import { changeBit, createBit, removeBit } from "./decide.ts";
import { bitKind } from "./kind.ts";
import { BitListQuery, type BitListQueryType, bitFilters } from "./list-query.ts";
import { type BitFilter, bits } from "./reads.ts";
import {
  BIT_SCHEMAS,
  BitChangeSchema,
  BitNumberSchema,
  BitPageSchema,
  BitSchema,
  NewBitSchema,
} from "./schema.ts";

const WRITE = { scope: "bits:write", tag: "bits", of: bits } as const;

export function bitRoutes(app: App, doors: Doors): void {
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
    (request, reply) => {
      const pageOf = async () => {
        const at = doors.now().toISOString();
        const filters = await doors.answer(filtersAsked(request.query, at));
        const page = await sendPage(request, reply, request.query, async (after, most) => {
          const found = await doors.answer(bits.searchBestFirst(placeOf(after), most, filters));
          return found.map(({ filter, number, record }) => ({ id: `${filter}.${number}`, record }));
        });
        return { ...page, data: page.data.map(({ record }) => record) };
      };
      // What a router does on a day rests on its readings as they are then.
      if (request.query.fitsRouterId !== undefined) return pageOf();
      return doors.answerRead(request, reply, viewerOf(request, bits), pageOf);
    },
  );

  createRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/bits",
      operationId: "createBit",
      summary: "Put a bit on the rack",
      body: NewBitSchema,
      answer: BitSchema,
    },
    function* ({ body, at }) {
      yield* requirePlace(body.homePlaceId);
      const { record, changes } = createBit(newId(bitKind.idPrefix), body, at, yield* shopPolicy());
      return { changes, answer: record };
    },
  );

  readRoute(app, doors, {
    scope: "bits:read",
    tag: "bits",
    of: bits,
    path: "/v1/bits/:bitId",
    operationId: "getBit",
    summary: "Read a bit",
  });

  askRoute(
    app,
    doors,
    {
      scope: "bits:read",
      tag: "bits",
      path: "/v1/bits/:bitId/number",
      operationId: "getBitNumber",
      summary: "The short number that the shop knows a bit by",
      answer: BitNumberSchema,
    },
    function* ({ params: { bitId } }) {
      return { bitId, number: requireFound(bitKind, bitId, yield* bits.shopNumberOf(bitId)) };
    },
  );

  changeRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/bits/:bitId",
      operationId: "updateBit",
      summary: "Change a bit",
      body: BitChangeSchema,
      answer: BitSchema,
    },
    function* (current, { body, at }) {
      yield* requirePlace(body.homePlaceId);
      const { record, changes } = changeBit(current, body, at, yield* shopPolicy());
      return { changes, answer: record };
    },
  );

  removeRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/bits/:bitId",
      operationId: "deleteBit",
      summary: "Take a bit off the rack; one that is on loan must come back first",
      gone: "It is gone; its last state stays in the events.",
    },
    (current) => {
      return [removeBit(current)];
    },
  );
}

function* filtersAsked(query: BitListQueryType, at: string): Question<readonly BitFilter[]> {
  const { fitsRouterId: id } = query;
  if (id === undefined) return bitFilters(query, undefined);
  const router = yield* routers.find(id);
  const policy = yield* shopPolicy();
  if (router !== undefined) {
    const usable = yield* usableRouter(router, at, policy);
    return bitFilters(query, { router: usable, speeds: dialSpeeds(usable, policy) });
  }
  throw notValid([unknownRecord("/fitsRouterId", routers.kind.noun, "query")]);
}

function requirePlace(placeId: string | null | undefined): Question<void> {
  return requireNamed([{ pointer: "/homePlaceId", id: placeId ?? undefined, of: places }]);
}

/** Where a page goes on: the filter that found the last bit, and the bit's number. */
function placeOf(cursor: string): { readonly filter: number; readonly number: number } {
  if (cursor === "") return { filter: 0, number: 0 };
  const [, filter, number] = /^(\d{1,2})\.(\d{1,15})$/.exec(cursor) ?? [];
  if (filter === undefined) throw notACursor();
  return { filter: Number(filter), number: Number(number) };
}
