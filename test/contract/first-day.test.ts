import { beforeEach, describe, expect, test } from "vitest";
import { lastSequence } from "./crib.ts";
import { openShop, type Shop } from "./shop.ts";

const PEOPLE = 28;
const RACKS = 2;
const POSITIONS_OF_A_RACK = 24;
const BITS = 120;
/** A room, its racks, and their positions. */
const PLACES = 1 + RACKS + RACKS * POSITIONS_OF_A_RACK;

/** As a shop's own table has them: sizes in inches and millimetres, each with its unit. */
const SIZES = ["1/2 in", "12 mm", "3/4 in", "19 mm", "1-1/2 in", "6.35 mm"];

const rows = (placeIds: readonly string[]) =>
  Array.from({ length: BITS }, (_, index) => {
    const size = SIZES[index % SIZES.length];
    return `Straight ${index + 1},straight,${size},25 mm,1/2 in,2,${placeIds[index % placeIds.length]}`;
  });

let shop: Shop;
let requests: number;

beforeEach(async () => {
  shop = await openShop();
  requests = 0;
});

async function send(method: "GET" | "POST", path: string, body?: object | string) {
  requests += 1;
  const answer = await shop.ask(method, path, {
    ...(body !== undefined && { body }),
    ...(typeof body === "string" && { headers: { "content-type": "text/csv" } }),
  });
  expect(answer.status, `${path} ${answer.text.slice(0, 300)}`).toBeLessThan(300);
  return answer;
}

const everybody = Array.from({ length: PEOPLE }, (_, index) => ({
  name: `Student ${index + 1}`,
  role: "student",
  key: { name: "Own phone" },
}));

const everywhere = [
  { name: "Machine room", kind: "room" },
  ...Array.from({ length: RACKS }, (_, rack) => ({
    name: `Rack ${rack + 1}`,
    kind: "rack",
    insideNumber: 1,
  })),
  ...Array.from({ length: RACKS * POSITIONS_OF_A_RACK }, (_, index) => ({
    name: `Position ${index + 1}`,
    kind: "position",
    insideNumber: 2 + (index % RACKS),
  })),
];

describe("the first day of a shop", () => {
  test("takes no more than twenty requests: people and keys, places, bits from a file, and all their labels", async () => {
    const people = (await send("POST", "/v1/people/batch", { data: everybody })).body.data;
    expect(people).toHaveLength(PEOPLE);
    for (const { person, key } of people) {
      expect(key.personId).toBe(person.id);
      expect((await shop.ask("GET", "/v1/me", { key: key.key })).body.role).toBe("student");
    }
    const places = (await send("POST", "/v1/places/batch", { data: everywhere })).body.data;
    expect(places).toHaveLength(PLACES);
    expect(places[1].insideId).toBe(places[0].id);
    const positions = places.slice(1 + RACKS).map(({ id }: { id: string }) => id);
    const header = "name,kind,diameterMm,cuttingLengthMm,shankDiameterMm,wings,homePlaceId";
    const file = [header, ...rows(positions)].join("\n");
    const report = (await send("POST", "/v1/bits/import", file)).body;
    expect(report).toMatchObject({ created: BITS });
    const { text, headers } = await send("GET", `/v1/places/${places[0].id}/labels`);
    expect(headers["content-type"]).toContain("text/html");
    expect(text.match(/data-group="label"/g)).toHaveLength(PLACES + BITS);
    expect(text).toContain("Straight 120");
    expect(requests).toBeLessThanOrEqual(20);
  });
});

describe("many at once", () => {
  test("are all entered or none, and a fault names its place in the list", async () => {
    const before = await lastSequence(shop);
    const wrong = await shop.ask("POST", "/v1/places/batch", {
      body: {
        data: [
          { name: "Room", kind: "room" },
          { name: "Rack", kind: "rack", insideNumber: 2 },
        ],
      },
    });
    expect(wrong.status).toBe(422);
    expect(wrong.body.errors).toMatchObject([{ pointer: "/data/1/insideNumber", accepted: "1 to 1" }]);
    const unknown = await shop.ask("POST", "/v1/places/batch", {
      body: {
        data: [
          { name: "Room", kind: "room" },
          { name: "Rack", kind: "rack", insideId: "place_0" },
        ],
      },
    });
    expect(unknown.body.errors).toMatchObject([{ pointer: "/data/1/insideId" }]);
    const both = { name: "Rack", kind: "rack", insideNumber: 1, insideId: "place_0" };
    const twice = await shop.ask("POST", "/v1/places/batch", {
      body: { data: [{ name: "Room", kind: "room" }, both] },
    });
    expect(twice.body.errors).toMatchObject([{ pointer: "/data/1/insideId" }]);
    for (const data of [[], Array.from({ length: 501 }, () => ({ name: "x", role: "member" }))]) {
      expect((await shop.ask("POST", "/v1/people/batch", { body: { data } })).status).toBe(422);
    }
    expect(await lastSequence(shop)).toBe(before);
  });

  test("are no deeper than places may be, those of the shop around them counted", async () => {
    const nested = (count: number, outermost: object = {}) =>
      Array.from({ length: count }, (_, index) => ({
        ...{ name: `Box ${index}`, kind: "drawer" },
        ...(index === 0 ? outermost : { insideNumber: index }),
      }));
    const add = (data: object[]) => shop.ask("POST", "/v1/places/batch", { body: { data } });
    const { status, body } = await add(nested(30));
    expect(status).toBe(201);
    const insideId = body.data.at(-1).id;
    expect((await add(nested(19, { insideId }))).status).toBe(201);
    const { body: refused } = await add(nested(40, { insideId }));
    expect(refused.errors).toMatchObject([
      { message: "That is too deep.", pointer: "/data/19/insideNumber" },
    ]);
  });

  test("sent again with their Idempotency-Key show no secret twice and enter nobody twice", async () => {
    const ask = () =>
      shop.ask("POST", "/v1/people/batch", {
        body: { data: everybody.slice(0, 2) },
        headers: { "Idempotency-Key": "first-day" },
      });
    expect((await ask()).status).toBe(201);
    const again = await ask();
    expect([again.status, again.body.code]).toEqual([409, "secret-shown-once"]);
    expect((await shop.ask("GET", "/v1/people?limit=200")).body.data).toHaveLength(2);
  });

  test("keys come with people only from whoever may create keys", async () => {
    const { body } = await shop.ask("POST", "/v1/keys", {
      body: { name: "Roll", role: "manager", scopes: ["people:write"] },
    });
    const withKeys = await shop.ask("POST", "/v1/people/batch", { body: { data: everybody }, key: body.key });
    expect([withKeys.status, withKeys.body.code]).toEqual([403, "scope-missing"]);
    const data = everybody.map(({ key: _, ...person }) => person);
    expect((await shop.ask("POST", "/v1/people/batch", { body: { data }, key: body.key })).status).toBe(201);
  });
});
