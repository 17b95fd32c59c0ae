import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addBit, addPlace, addSomebody, lastSequence, made } from "./crib.ts";
import { openShop, type Shop } from "./shop.ts";

let shop: Shop;

beforeAll(async () => {
  shop = await openShop({}, () => new Date(), afterAll);
});

const get = async (url: string) => (await shop.ask("GET", url)).body;
const contents = (id: string) => get(`/v1/places/${id}/contents`);
const count = (id: string, bitIds: readonly string[]) =>
  shop.ask("POST", `/v1/places/${id}/stock-takes`, { body: { bitIds } });
const move = (id: string, insideId: string | null) =>
  shop.ask("PATCH", `/v1/places/${id}`, { body: { insideId }, headers: { "If-Match": "*" } });
const remove = (id: string) => shop.ask("DELETE", `/v1/places/${id}`, { headers: { "If-Match": "*" } });

const NOTHING = { here: [], misplaced: [], away: [], missing: [], names: {}, isComplete: true };

describe("places nest", () => {
  test("what is in a drawer is in its cabinet and in the room", async () => {
    const room = await addPlace(shop, "Room");
    const cabinet = await addPlace(shop, "Cabinet", room.id);
    const drawer = await addPlace(shop, "Drawer", cabinet.id);
    const bit = await addBit(shop, { homePlaceId: drawer.id });
    expect(bit.placeId).toBe(drawer.id);
    for (const { id } of [room, cabinet, drawer]) {
      expect(await contents(id)).toEqual({
        ...NOTHING,
        placeId: id,
        here: [bit.id],
        names: { [bit.id]: bit.name },
      });
    }
    const { data } = await get(`/v1/places?insideId=${room.id}`);
    expect(data.map(({ id }: { id: string }) => id)).toEqual([cabinet.id]);
    expect((await move(cabinet.id, null)).body.insideId).toBeUndefined();
    expect(await contents(room.id)).toEqual({ ...NOTHING, placeId: room.id });
  });

  test("never in a ring, however long", async () => {
    const outer = await addPlace(shop, "Outer");
    const inner = await addPlace(shop, "Inner", outer.id);
    const innermost = await addPlace(shop, "Innermost", inner.id);
    const before = await lastSequence(shop);
    for (const { id } of [outer, inner, innermost]) {
      const answer = await move(outer.id, id);
      expect(answer.status).toBe(422);
      expect(answer.body.errors).toMatchObject([{ pointer: "/insideId" }]);
    }
    expect(await lastSequence(shop)).toBe(before);
  });

  test("never deeper than can be looked through for rings", async () => {
    const chain = [await addPlace(shop, "Level 1")];
    for (let level = 2; level <= 50; level += 1) {
      chain.push(await addPlace(shop, `Level ${level}`, chain.at(-1)?.id));
    }
    const deeper = await shop.ask("POST", "/v1/places", {
      body: { name: "Level 51", kind: "position", insideId: chain.at(-1)?.id },
    });
    expect(deeper.status).toBe(422);
    expect(deeper.body.errors).toMatchObject([{ pointer: "/insideId", message: "That is too deep." }]);
    // A whole branch may still come under another one: what is too deep then takes nothing more inside.
    const above = await addPlace(shop, "Above");
    expect((await move(chain[0].id, above.id)).status).toBe(200);
    expect((await move(above.id, chain.at(-1)?.id)).status).toBe(422);
    expect((await move(above.id, chain[20].id)).status).toBe(422);
  });

  test("not in a ring either when two are put inside each other at the same moment", async () => {
    const one = await addPlace(shop, "One");
    const other = await addPlace(shop, "Other");
    const answers = await Promise.all([move(one.id, other.id), move(other.id, one.id)]);
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 422]);
    const places = await Promise.all([one, other].map(({ id }) => get(`/v1/places/${id}`)));
    expect(places.filter(({ insideId }) => insideId !== undefined)).toHaveLength(1);
  });

  test.each(["place_0", ""])("not inside the place %j, which is not there", async (insideId) => {
    const answer = await shop.ask("POST", "/v1/places", { body: { name: "x", kind: "rack", insideId } });
    expect(answer.status).toBe(422);
    expect(answer.body.errors).toMatchObject([{ pointer: "/insideId" }]);
  });
});

describe("a stock-take", () => {
  test("lists what is missing, what does not belong, and what was found again", async () => {
    const here = await addPlace(shop, "Here");
    const elsewhere = await addPlace(shop, "Elsewhere");
    const [seen, lost] = [
      await addBit(shop, { homePlaceId: here.id }),
      await addBit(shop, { homePlaceId: here.id }),
    ];
    const stranger = await addBit(shop, { homePlaceId: elsewhere.id });
    const homeless = await addBit(shop);
    const first = await count(here.id, [seen.id, stranger.id, homeless.id, seen.id]);
    const names = Object.fromEntries([seen, lost, stranger, homeless].map(({ id, name }) => [id, name]));
    expect(first.status).toBe(200);
    expect(first.body).toEqual({
      ...NOTHING,
      names,
      placeId: here.id,
      here: [seen.id],
      misplaced: [stranger.id, homeless.id],
      missing: [lost.id],
    });
    expect((await get(`/v1/bits/${lost.id}`)).missingSince).toBeDefined();
    expect((await contents(elsewhere.id)).away).toEqual([
      { bitId: stranger.id, state: "in-rack", placeId: here.id },
    ]);
    const second = await count(here.id, [seen.id, lost.id]);
    expect(second.body).toMatchObject({ here: [seen.id, lost.id], misplaced: [], missing: [] });
    expect((await contents(elsewhere.id)).missing).toEqual([stranger.id]);
    const missing = await get("/v1/bits?missing=yes&limit=200");
    expect(missing.data.map(({ id }: { id: string }) => id)).toEqual([stranger.id, homeless.id]);
  });

  test("that finds everything where it was writes nothing", async () => {
    const place = await addPlace(shop, "Rack");
    const bit = await addBit(shop, { homePlaceId: place.id });
    await count(place.id, []);
    const before = await lastSequence(shop);
    await count(place.id, []);
    expect(await lastSequence(shop)).toBe(before);
    await count(place.id, [bit.id]);
    await count(place.id, [bit.id]);
    expect(await lastSequence(shop)).toBe(before + 1);
  });

  test("does not miss what is known to be away: on loan, even if held meanwhile, or at sharpening", async () => {
    const place = await addPlace(shop, "Rack");
    const { id: personId } = await addSomebody(shop, "member");
    const [lent, lentAndHeld, away] = await Promise.all(
      [1, 2, 3].map(() => addBit(shop, { homePlaceId: place.id })),
    );
    for (const { id } of [lent, lentAndHeld]) await made(shop, "/v1/loans", { bitId: id, personId });
    await shop.ask("POST", `/v1/bits/${lentAndHeld.id}/hold`, { body: { reason: "It may be chipped." } });
    await shop.ask("POST", `/v1/bits/${away.id}/send-to-sharpening`);
    const { body } = await count(place.id, []);
    expect(body.missing).toEqual([]);
    expect(body.away).toHaveLength(3);
    expect(body.away).toEqual(
      expect.arrayContaining([
        { bitId: lent.id, state: "on-loan" },
        { bitId: lentAndHeld.id, state: "held" },
        { bitId: away.id, state: "at-sharpening" },
      ]),
    );
  });

  test("misses a bit that was given a place later on and was never seen there", async () => {
    const place = await addPlace(shop, "Rack");
    const bit = await addBit(shop);
    const url = `/v1/bits/${bit.id}`;
    await shop.ask("PATCH", url, { body: { homePlaceId: place.id }, headers: { "If-Match": "*" } });
    expect((await count(place.id, [])).body.missing).toEqual([bit.id]);
  });

  test("of a rack calls no bit away that belongs in a position of it, wherever it was seen last", async () => {
    const rack = await addPlace(shop, "Rack");
    const position = await addPlace(shop, "Position 14", rack.id);
    const elsewhere = await addPlace(shop, "Bench");
    const add = () => addBit(shop, { homePlaceId: position.id });
    const [resting, returned, found] = [await add(), await add(), await add()];
    await count(elsewhere.id, [returned.id, found.id]);
    await count(rack.id, [resting.id, returned.id]);
    expect((await get(`/v1/bits/${returned.id}`)).placeId).toBe(position.id);
    for (const { id } of [rack, position]) {
      expect(await contents(id)).toMatchObject({
        here: [resting.id, returned.id],
        away: [{ bitId: found.id, placeId: elsewhere.id }],
        missing: [],
      });
    }
  });

  test("knows a bit that was only seen in the rack when its position is asked about, and counts it there", async () => {
    const rack = await addPlace(shop, "Rack");
    const bit = await addBit(shop, { homePlaceId: rack.id });
    const position = await addPlace(shop, "Position 15", rack.id);
    const file = `id,homePlaceId\n${bit.id},${position.id}\n`;
    const answer = await shop.ask("POST", "/v1/bits/import", {
      body: file,
      headers: { "content-type": "text/csv" },
    });
    expect(answer.body).toMatchObject({ changed: 1 });
    expect(await contents(position.id)).toMatchObject({ here: [bit.id], away: [] });
    expect((await count(position.id, [bit.id])).body).toMatchObject({ here: [bit.id], away: [] });
    expect((await get(`/v1/bits/${bit.id}`)).placeId).toBe(position.id);
  });

  test("of a place that a bit was given later, and was never seen out of, does not call it away", async () => {
    const rack = await addPlace(shop, "Rack");
    const bit = await addBit(shop);
    const change = { body: { homePlaceId: rack.id }, headers: { "If-Match": "*" } };
    await shop.ask("PATCH", `/v1/bits/${bit.id}`, change);
    expect(await contents(rack.id)).toMatchObject({ here: [bit.id], away: [] });
  });

  test("with a bit nobody knows is refused whole", async () => {
    const place = await addPlace(shop, "Rack");
    const bit = await addBit(shop, { homePlaceId: place.id });
    const before = await lastSequence(shop);
    const answer = await count(place.id, [bit.id, "bit_0", "bit_1"]);
    expect(answer.status).toBe(422);
    const pointers = answer.body.errors.map(({ pointer }: { pointer: string }) => pointer);
    expect(pointers).toEqual(["/bitIds/1", "/bitIds/2"]);
    expect(await lastSequence(shop)).toBe(before);
    expect((await count("place_0", [])).status).toBe(404);
  });
});

describe("a place is removed", () => {
  test("only when no place is inside it and no bit is in it or belongs to it", async () => {
    const outer = await addPlace(shop, "Outer");
    const inner = await addPlace(shop, "Inner", outer.id);
    const bit = await addBit(shop, { homePlaceId: inner.id });
    const refusals = await Promise.all([remove(outer.id), remove(inner.id)]);
    expect(refusals.map(({ status, body }) => [status, body.code])).toEqual([
      [409, "place-in-use"],
      [409, "place-in-use"],
    ]);
    const url = `/v1/bits/${bit.id}`;
    await shop.ask("PATCH", url, { body: { homePlaceId: null }, headers: { "If-Match": "*" } });
    expect((await remove(inner.id)).status).toBe(409);
    await shop.ask("DELETE", url, { headers: { "If-Match": "*" } });
    expect((await remove(inner.id)).status).toBe(204);
    expect((await remove(outer.id)).status).toBe(204);
    expect((await shop.ask("GET", `/v1/places/${outer.id}`)).status).toBe(404);
  });

  test("or has something put inside, if both are asked at once: never both", async () => {
    const outer = await addPlace(shop, "Outer");
    const [gone, late] = await Promise.all([
      remove(outer.id),
      shop.ask("POST", "/v1/places", { body: { name: "Late", kind: "drawer", insideId: outer.id } }),
    ]);
    const { data: inside } = await get(`/v1/places?insideId=${outer.id}`);
    if (gone.status === 204) {
      expect(late.status).toBe(422);
      expect(inside).toEqual([]);
    } else {
      // An engine that is waited for may come to the later one first.
      expect([gone.status, gone.body.code, late.status]).toEqual([409, "place-in-use", 201]);
      expect(inside).toEqual([late.body]);
    }
  });
});
