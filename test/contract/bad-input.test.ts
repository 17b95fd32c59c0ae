import { describe, expect, test } from "vitest";
import { openShop, PANEL_BIT, sharedShop, TABLE_ROUTER } from "./shop.ts";

const { form } = PANEL_BIT;
const { dial } = TABLE_ROUTER;

type Case = [
  name: string,
  path: string,
  body: object | string,
  faults: [pointer: string, accepted: RegExp][],
];

const CASES: Case[] = [
  [
    "an unknown form",
    "/v1/bits",
    { ...PANEL_BIT, form: { ...form, kind: "dragon" } },
    [["/form/kind", /panel-raising/]],
  ],
  ["a form without a kind", "/v1/bits", { ...PANEL_BIT, form: {} }, [["/form/kind", /panel-raising/]]],
  [
    "a day that is none",
    "/v1/bits",
    { ...PANEL_BIT, purchasedOn: "last spring" },
    [["/purchasedOn", /^a date, such as \d{4}-\d{2}-\d{2}, from 1970 to 2999$/]],
  ],
  [
    "a moment without its offset",
    "/v1/loans",
    { bitId: "bit_0", dueAt: "2026-03-02T08:00:00" },
    [["/dueAt", /^a date and time with its offset, such as /]],
  ],
  ["a misspelt key", "/v1/bits", { ...PANEL_BIT, wing: 2 }, [["/wing", /wings/]]],
  [
    "a misspelt dimension of a form",
    "/v1/bits",
    { ...PANEL_BIT, form: { ...form, pilotDiametreMm: 22 } },
    [["/form/pilotDiametreMm", /pilotDiameterMm/]],
  ],
  [
    "a negative size",
    "/v1/bits",
    { ...PANEL_BIT, shankDiameterMm: -12.7 },
    [["/shankDiameterMm", /3 to 20/]],
  ],
  [
    "a size of zero",
    "/v1/bits",
    { ...PANEL_BIT, form: { ...form, diameterMm: 0 } },
    [["/form/diameterMm", /30 to 120/]],
  ],
  ["half a wing", "/v1/bits", { ...PANEL_BIT, wings: 2.5 }, [["/wings", /whole number from 1 to 12/]]],
  [
    "a pilot larger than the bit",
    "/v1/bits",
    { ...PANEL_BIT, form: { ...form, diameterMm: 40, pilotDiameterMm: 44 } },
    [["/form/pilotDiameterMm", /less than 40/]],
  ],
  ["text for a number", "/v1/bits", { ...PANEL_BIT, massG: "340" }, [["/massG", /a number from 1 to 3000/]]],
  ["true for a number", "/v1/bits", { ...PANEL_BIT, wings: true }, [["/wings", /whole number/]]],
  ["null for a number", "/v1/bits", { ...PANEL_BIT, massG: null }, [["/massG", /a number/]]],
  ["a name of blanks", "/v1/bits", { ...PANEL_BIT, name: "   " }, [["/name", /1 to 100 characters/]]],
  [
    "everything wrong at once, each named",
    "/v1/bits",
    { name: "", form: { kind: "straight", diameterMm: 8 }, wings: "2", colour: "red" },
    [
      ["/name", /1 to 100/],
      ["/form/cuttingLengthMm", /a number/],
      ["/wings", /whole number/],
      ["/shankDiameterMm", /a number from 3 to 20/],
      ["/colour", /shankDiameterMm/],
    ],
  ],
  ["a list in place of an object", "/v1/bits", "[]", [["", /an object/]]],
  ["a bare word in place of an object", "/v1/bits", "true", [["", /an object/]]],
  [
    "a number beyond all numbers",
    "/v1/bits",
    JSON.stringify(PANEL_BIT).replace("88.9", "1e999"),
    [["/form/diameterMm", /30 to 120/]],
  ],
  [
    "a number beyond all numbers in a list",
    "/v1/routers",
    JSON.stringify(TABLE_ROUTER).replace("6.35", "-1e999"),
    [["/colletDiametersMm/0", /3 to 20/]],
  ],
  [
    "two dial readings of one mark that differ",
    "/v1/routers",
    { ...TABLE_ROUTER, dial: { ...dial, readings: [...dial.readings, { mark: 6, rpm: 23000 }] } },
    [["/dial/readings/2/rpm", /about 21600/]],
  ],
  [
    "dial readings that fall in speed",
    "/v1/routers",
    { ...TABLE_ROUTER, dial: { ...dial, readings: [dial.readings[0], { mark: 2, rpm: 9200 }] } },
    [["/dial/readings/1/rpm", /more than 9800/]],
  ],
  [
    "a slowest speed above the fastest",
    "/v1/routers",
    { ...TABLE_ROUTER, minRpm: 30000 },
    [["/minRpm", /at most 22000/]],
  ],
  [
    "marks that are neither a number nor a letter",
    "/v1/routers",
    { ...TABLE_ROUTER, dial: { ...dial, marks: { first: "slow", last: 6 } } },
    [["/dial/marks/first", /a letter/]],
  ],
];

const { ask } = sharedShop();

describe("bad input is refused with every field named, and changes nothing", () => {
  test.each(CASES)("%s", async (_name, path, body, faults) => {
    const before = await ask("GET", "/v1/events");
    const answer = await ask("POST", path, { body });
    expect(answer.status).toBe(422);
    expect(answer.body.code).toBe("not-valid");
    expect(answer.headers["content-type"]).toMatch(/^application\/problem\+json/);
    const errors: { pointer: string; accepted: string; message: string }[] = answer.body.errors;
    expect(errors.map(({ pointer }) => pointer).sort()).toEqual(faults.map(([pointer]) => pointer).sort());
    for (const [pointer, accepted] of faults) {
      expect(errors.find((error) => error.pointer === pointer)?.accepted).toMatch(accepted);
    }
    expect((await ask("GET", path)).body.data).toEqual([]);
    expect((await ask("GET", "/v1/events")).body).toEqual(before.body);
  });

  test("a change that would make the bit impossible, though each field is possible alone", async () => {
    const { ask } = await openShop();
    const { body: bit } = await ask("POST", "/v1/bits", { body: PANEL_BIT });
    const answer = await ask("PATCH", `/v1/bits/${bit.id}`, {
      body: { form: { ...form, pilotDiameterMm: 60, diameterMm: 50 } },
      headers: { "If-Match": '"1"' },
    });
    expect(answer.status).toBe(422);
    expect(answer.body.errors[0].pointer).toBe("/form/pilotDiameterMm");
    expect((await ask("GET", `/v1/bits/${bit.id}`)).body).toEqual(bit);
  });

  test("null for a field that a bit needs", async () => {
    const { ask } = await openShop();
    const { body: bit } = await ask("POST", "/v1/bits", { body: PANEL_BIT });
    const answer = await ask("PATCH", `/v1/bits/${bit.id}`, {
      body: { wings: null, name: null },
      headers: { "If-Match": '"1"' },
    });
    expect(answer.status).toBe(422);
    const pointers = answer.body.errors.map(({ pointer }: { pointer: string }) => pointer);
    expect(pointers.sort()).toEqual(["/name", "/wings"]);
  });

  test.each([
    ["limit=0", "/limit", /1 to 200/],
    ["limit=201", "/limit", /1 to 200/],
    ["limit=ten", "/limit", /whole number/],
    ["page=2", "/page", /limit, cursor/],
    ["cursor=%2A", "/cursor", /nextCursor/],
    ["cursor=%00", "/cursor", /well-formed/],
  ])("the query ?%s", async (query, pointer, accepted) => {
    const answer = await ask("GET", `/v1/bits?${query}`);
    expect(answer.status).toBe(422);
    expect(answer.body.errors).toEqual([expect.objectContaining({ in: "query", pointer })]);
    expect(answer.body.errors[0].accepted).toMatch(accepted);
  });
});

describe("a body that is not a JSON object of ours", () => {
  test.each([
    ["broken JSON", '{"name": "Raised'],
    ["an empty body", ""],
    ["a prototype in disguise", '{"__proto__": {"role": "manager"}, "name": "x"}'],
    ["a constructor in disguise", '{"constructor": {"prototype": {}}, "name": "x"}'],
  ])("%s is a 400", async (_name, body) => {
    const answer = await ask("POST", "/v1/bits", { body });
    expect(answer.status).toBe(400);
    expect(answer.body.code).toBe("not-json");
  });

  test("a body of 1 MB is a 413", async () => {
    const answer = await ask("POST", "/v1/bits", { body: { ...PANEL_BIT, notes: "x".repeat(1024 * 1024) } });
    expect(answer.status).toBe(413);
    expect(answer.body.code).toBe("body-too-large");
  });

  test.each(["text/plain", "application/xml", "application/x-www-form-urlencoded"])(
    "%s is a 415",
    async (type) => {
      const answer = await ask("POST", "/v1/bits", { body: "name=x", headers: { "content-type": type } });
      expect(answer.status).toBe(415);
      expect(answer.headers["accept"]).toBe("application/json");
    },
  );
});
