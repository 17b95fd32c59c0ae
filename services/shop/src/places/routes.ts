import { bits } from "../bits/reads.ts";
import type { App } from "../http/app-type.ts";
import { askRoute } from "../http/ask-routes.ts";
import { createManyRoute, type RowsBefore } from "../http/create-many-route.ts";
import { unknownRecord } from "../http/named-records.ts";
import { listRecordsRoute, readRoute, requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { actRoute, changeRoute, createRoute, removeRoute } from "../http/write-routes.ts";
import { type FieldFault, notValid, Problem } from "../problems/problem.ts";
import { removal } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import type { Expectation } from "../store/port.ts";
import type { Question } from "../store/query.ts";
import { changePlace, contentsOf, countBits, createPlace, type Surroundings } from "./decide.ts";
import { placeKind } from "./kind.ts";
import { DEEPEST_PLACE, places } from "./reads.ts";
import {
  type ListedPlace,
  MOST_BITS_COUNTED,
  NewPlaceSchema,
  NewPlacesAnswerSchema,
  NewPlacesSchema,
  PLACE_SCHEMAS,
  PlaceChangeSchema,
  type PlaceContents,
  PlaceContentsSchema,
  PlacePageSchema,
  type PlaceRecord,
  PlaceSchema,
  StockTakeSchema,
} from "./schema.ts";

const READ = { scope: "places:read", tag: "places", of: places } as const;
const WRITE = { scope: "places:write", tag: "places", of: places } as const;

export function placeRoutes(app: App, doors: Doors): void {
  for (const schema of PLACE_SCHEMAS) app.addSchema(schema);

  listRecordsRoute(app, doors, {
    ...READ,
    path: "/v1/places",
    operationId: "listPlaces",
    summary: "List the places of the shop",
    page: PlacePageSchema,
    filters: { insideId: "Places inside this one." },
  });

  readRoute(app, doors, {
    ...READ,
    path: "/v1/places/:placeId",
    operationId: "getPlace",
    summary: "Read a place",
  });

  askRoute(
    app,
    doors,
    {
      ...READ,
      path: "/v1/places/:placeId/contents",
      operationId: "getPlaceContents",
      summary: "What is in a place, what should be, and what is missing",
      answer: PlaceContentsSchema,
    },
    function* ({ params: { placeId } }) {
      return yield* contentsNow(requireFound(placeKind, placeId, yield* places.find(placeId)));
    },
  );

  createRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/places",
      operationId: "createPlace",
      summary: "Add a place",
      body: NewPlaceSchema,
      answer: PlaceSchema,
    },
    function* ({ body, at }) {
      const outer = yield* outerOf(body.insideId);
      const { record, changes } = createPlace(newId(placeKind.idPrefix), body, at);
      return { changes, expects: stillThere(outer), answer: record };
    },
  );

  createManyRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/places/batch",
      operationId: "createManyPlaces",
      summary: "Add many places at once, also inside one another",
      body: NewPlacesSchema,
      answer: NewPlacesAnswerSchema,
    },
    function* ({ insideNumber, ...given }: ListedPlace, { at }, before: RowsBefore<PlaceRecord>) {
      if (insideNumber !== undefined && given.insideId !== undefined) {
        const message = "It is inside one place, of this list or of the shop.";
        throw notValid([
          { in: "body", pointer: "/insideId", message, accepted: "leave it out, or insideNumber" },
        ]);
      }
      const place =
        insideNumber === undefined ? given : { ...given, insideId: yield* insideOf(insideNumber, before) };
      const outer = insideNumber === undefined ? yield* outerOf(given.insideId) : [];
      const { record, changes } = createPlace(newId(placeKind.idPrefix), place, at);
      return { changes, expects: stillThere(outer), answer: record };
    },
  );

  changeRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/places/:placeId",
      operationId: "updatePlace",
      summary: "Change a place, or put it inside another",
      body: PlaceChangeSchema,
      answer: PlaceSchema,
    },
    function* (current, { body, at }) {
      const outer = yield* outerOf(body.insideId);
      const { record, changes } = changePlace(current, body, outer, at);
      return { changes, expects: stillThere(outer), answer: record };
    },
  );

  removeRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/places/:placeId",
      operationId: "deletePlace",
      summary: "Remove a place that nothing is kept in",
      gone: "It is gone; its last state stays in the events.",
    },
    function* (current) {
      const within = yield* places.idsWithin(current.id);
      if (within.length > 1) throw new Problem("place-in-use", "Other places are inside it.");
      const [bit] = yield* places.bitsOf(within, 1);
      if (bit !== undefined) throw new Problem("place-in-use", `Bit ${bit.id} is or belongs there.`);
      return [removal(placeKind, current)];
    },
  );

  actRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/places/:placeId/stock-takes",
      operationId: "takeStock",
      summary: "Report which bits were seen at a place; what should be there and was not is missing",
      body: StockTakeSchema,
      answer: PlaceContentsSchema,
    },
    function* (place, { body, at }) {
      const surroundings = yield* surroundingsOf(place.id);
      const { within } = surroundings;
      const expected = yield* places.bitsOf(within, MOST_BITS_COUNTED + 1);
      if (expected.length > MOST_BITS_COUNTED) {
        throw new Problem(
          "place-in-use",
          `More than ${MOST_BITS_COUNTED} bits: count the places inside it one by one.`,
        );
      }
      const seen = yield* seenBits(body.bitIds);
      const counted = countBits(place.id, within, expected, seen, at);
      const answer = contentsOf(place.id, surroundings, counted.bits, true);
      return { changes: counted.changes, answer };
    },
  );
}

/** The id of a place that the same request creates before this one; it may be inside others of the list, and of the shop. */
function* insideOf(number: number, before: RowsBefore<PlaceRecord>): Question<string> {
  const chain: PlaceRecord[] = [];
  const ofList = (wanted: string | undefined) => before.find((place) => place?.id === wanted);
  for (let place = before[number - 1]; place !== undefined; place = ofList(place.insideId)) chain.push(place);
  const [inner] = chain;
  if (inner === undefined) {
    const message = "No such place comes before this one.";
    throw notValid([{ in: "body", pointer: "/insideNumber", message, accepted: `1 to ${before.length}` }]);
  }
  const outside = yield* outerOf(chain.at(-1)?.insideId);
  if (chain.length + outside.length < DEEPEST_PLACE - 1) return inner.id;
  throw notValid([tooDeep("/insideNumber")]);
}

function* contentsNow({ id }: PlaceRecord): Question<PlaceContents> {
  const surroundings = yield* surroundingsOf(id);
  const all = yield* places.bitsOf(surroundings.within, MOST_BITS_COUNTED + 1);
  return contentsOf(id, surroundings, all.slice(0, MOST_BITS_COUNTED), all.length <= MOST_BITS_COUNTED);
}

function* surroundingsOf(placeId: string): Question<Surroundings> {
  const within = yield* places.idsWithin(placeId);
  const outer = (yield* places.outward(placeId)).slice(1).map(({ id }) => id);
  return { within, outer };
}

function* outerOf(insideId: string | null | undefined): Question<PlaceRecord[]> {
  if (insideId === undefined || insideId === null) return [];
  const outer = yield* places.outward(insideId);
  if (outer.length > 0 && outer.length < DEEPEST_PLACE) return outer;
  throw notValid([outer.length === 0 ? unknownRecord("/insideId", placeKind.noun) : tooDeep("/insideId")]);
}

function tooDeep(pointer: string): FieldFault {
  const accepted = `a place inside fewer than ${DEEPEST_PLACE - 1} others`;
  return { in: "body", pointer, message: "That is too deep.", accepted };
}

function* seenBits(ids: readonly string[]) {
  const found = [];
  const faults = [];
  for (const id of new Set(ids)) {
    const bit = yield* bits.find(id);
    if (bit === undefined) faults.push(unknownRecord(`/bitIds/${ids.indexOf(id)}`, bits.kind.noun));
    else found.push(bit);
  }
  if (faults.length > 0) throw notValid(faults);
  return found;
}

/** What a place is put inside must still be where it was when that is written, or a ring could close meanwhile. */
function stillThere(outer: readonly PlaceRecord[]): Expectation[] {
  return outer.map(({ id, version }) => ({ kind: placeKind, id, version }));
}
