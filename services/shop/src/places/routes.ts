import Type from "typebox";
import type { BitReads } from "../bits/reads.ts";
import type { AnswerOnce } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { etagOf, requireMatch } from "../http/conditional.ts";
import { unknownRecord } from "../http/named-records.ts";
import { idFilter, listRoute, readRoute, requireFound } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { changedMeanwhile, decidedAnew, stampOf, type Write } from "../http/write.ts";
import { notValid, Problem } from "../problems/problem.ts";
import { removal } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import type { Expectation } from "../store/port.ts";
import { changePlace, contentsOf, countBits, createPlace } from "./decide.ts";
import { DEEPEST_PLACE, type PlaceReads } from "./reads.ts";
import {
  MOST_BITS_COUNTED,
  NewPlaceSchema,
  PLACE_SCHEMAS,
  PlaceChangeSchema,
  type PlaceContents,
  PlaceContentsSchema,
  PlacePageSchema,
  type PlaceRecord,
  PlaceSchema,
  StockTakeSchema,
} from "./schema.ts";

type Parts = {
  readonly reads: PlaceReads;
  readonly bits: BitReads;
  readonly write: Write;
  readonly answerOnce: AnswerOnce;
  readonly now: () => Date;
};

const PlacePath = Type.Object({ placeId: Type.String({ description: "Id of a place." }) });

export function placeRoutes(app: App, { reads, bits, write, answerOnce, now }: Parts): void {
  for (const schema of PLACE_SCHEMAS) app.addSchema(schema);
  const common = { scope: "places:read", tag: "places" } as const;

  listRoute(
    app,
    {
      ...common,
      path: "/v1/places",
      operationId: "listPlaces",
      summary: "List the places of the shop",
      page: PlacePageSchema,
      filters: {
        insideId: idFilter("Places inside this one."),
      },
    },
    (afterId, most, { insideId }) => reads.page(afterId, most, { insideId }),
  );

  readRoute(
    app,
    {
      ...common,
      path: "/v1/places/:placeId",
      operationId: "getPlace",
      summary: "Read a place",
      record: PlaceSchema,
      noun: "place",
      parameter: "placeId",
    },
    reads.find,
  );

  app.get(
    "/v1/places/:placeId/contents",
    {
      config: { scope: "places:read", operation: "act" },
      schema: {
        operationId: "getPlaceContents",
        tags: ["places"],
        summary: "What is in a place, what should be, and what is missing",
        params: PlacePath,
        response: { 200: ref(PlaceContentsSchema) },
      },
    },
    async (request) => contents(await found(request.params.placeId)),
  );

  app.post(
    "/v1/places",
    {
      config: { scope: "places:write", operation: "create" },
      schema: {
        operationId: "createPlace",
        tags: ["places"],
        summary: "Add a place",
        body: ref(NewPlaceSchema),
        response: { 201: ref(PlaceSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        const outer = await outerOf(request.body.insideId);
        const stamp = stampOf(request, now());
        const { record, change } = createPlace(newId("place"), request.body, stamp.at);
        const headers = { Location: `/v1/places/${record.id}`, ETag: etagOf(record.version) };
        return { stamp, changes: [change], expects: stillThere(outer), headers, body: record };
      }),
  );

  app.patch(
    "/v1/places/:placeId",
    {
      config: { scope: "places:write", operation: "change" },
      schema: {
        operationId: "updatePlace",
        tags: ["places"],
        summary: "Change a place, or put it inside another",
        params: PlacePath,
        body: ref(PlaceChangeSchema),
        response: { 200: ref(PlaceSchema) },
      },
    },
    async (request, reply) => {
      const current = await found(request.params.placeId);
      requireMatch(request, current.version);
      const outer = await outerOf(request.body.insideId);
      const stamp = stampOf(request, now());
      const { record, change } = changePlace(current, request.body, outer, stamp.at);
      await write({ stamp, changes: [change], expects: stillThere(outer) });
      reply.header("ETag", etagOf(record.version));
      return record;
    },
  );

  app.delete(
    "/v1/places/:placeId",
    {
      config: { scope: "places:write", operation: "remove" },
      schema: {
        operationId: "deletePlace",
        tags: ["places"],
        summary: "Remove a place that nothing is kept in",
        params: PlacePath,
        response: { 204: Type.Null({ description: "It is gone; its last state stays in the events." }) },
      },
    },
    async (request, reply) => {
      await decidedAnew(async () => {
        const current = await found(request.params.placeId);
        requireMatch(request, current.version);
        const within = await reads.idsWithin(current.id);
        if (within.length > 1) throw new Problem("place-in-use", "Other places are inside it.");
        const [bit] = await reads.bitsOf(within, 1);
        if (bit !== undefined) throw new Problem("place-in-use", `Bit ${bit.id} is or belongs there.`);
        await write({ stamp: stampOf(request, now()), changes: [removal("place", current)] });
      });
      return reply.code(204).send(null);
    },
  );

  app.post(
    "/v1/places/:placeId/stock-takes",
    {
      config: { scope: "places:write", operation: "act" },
      schema: {
        operationId: "takeStock",
        tags: ["places"],
        summary: "Tell which bits were seen at a place; what should be there and was not is missing",
        params: PlacePath,
        body: ref(StockTakeSchema),
        response: { 200: ref(PlaceContentsSchema) },
      },
    },
    (request) =>
      decidedAnew(async () => {
        const place = await found(request.params.placeId);
        const within = await reads.idsWithin(place.id);
        const expected = await reads.bitsOf(within, MOST_BITS_COUNTED + 1);
        if (expected.length > MOST_BITS_COUNTED) {
          throw new Problem(
            "place-in-use",
            `More than ${MOST_BITS_COUNTED} bits: count the places inside it one by one.`,
          );
        }
        const seen = await seenBits(request.body.bitIds);
        const stamp = stampOf(request, now());
        const changes = countBits(place.id, within, expected, seen, stamp.at);
        if (changes.length > 0) await write({ stamp, changes }, changedMeanwhile);
        return contents(place);
      }),
  );

  async function found(id: string) {
    return requireFound("place", id, await reads.find(id));
  }

  async function contents({ id }: { readonly id: string }): Promise<PlaceContents> {
    const within = await reads.idsWithin(id);
    const all = await reads.bitsOf(within, MOST_BITS_COUNTED + 1);
    return contentsOf(id, within, all.slice(0, MOST_BITS_COUNTED), all.length <= MOST_BITS_COUNTED);
  }

  async function outerOf(insideId: string | null | undefined) {
    if (insideId === undefined || insideId === null) return [];
    const outer = await reads.outward(insideId);
    if (outer.length > 0 && outer.length < DEEPEST_PLACE) return outer;
    const fault =
      outer.length === 0
        ? unknownRecord("/insideId", "place")
        : {
            in: "body" as const,
            pointer: "/insideId",
            message: "That is too deep.",
            accepted: `a place inside fewer than ${DEEPEST_PLACE - 1} others`,
          };
    throw notValid([fault]);
  }

  async function seenBits(ids: readonly string[]) {
    const records = await Promise.all(
      [...new Set(ids)].map(async (id) => ({ id, bit: await bits.find(id) })),
    );
    const unknown = records.filter(({ bit }) => bit === undefined);
    if (unknown.length > 0) {
      throw notValid(
        unknown.map(({ id }) => ({
          in: "body" as const,
          pointer: `/bitIds/${ids.indexOf(id)}`,
          message: "There is no such bit.",
          accepted: "the id of a bit of the rack",
        })),
      );
    }
    return records.flatMap(({ bit }) => bit ?? []);
  }
}

/** What a place is put inside must be where it was when that is written, or a ring could close meanwhile. */
function stillThere(outer: readonly PlaceRecord[]): Expectation[] {
  return outer.map(({ id, version }) => ({ type: "place", id, version }));
}
