import { afterAll, beforeAll, expect, test } from "vitest";
import { bodyOf, OPERATIONS, urlOf } from "./bodies.ts";
import { lastSequence, made } from "./crib.ts";
import { type Furnished, furnish } from "./furnish.ts";
import { bodySchemas, parameterSchemas } from "./request-schemas.ts";
import { openShop, PANEL_BIT, type Shop } from "./shop.ts";

let shop: Shop;
let furnished: Furnished;

beforeAll(async () => {
  shop = await openShop({}, () => new Date(), afterAll);
  furnished = await furnish((path, body, key) => made(shop, path, body, key));
}, 60_000);

/** RFC 3339 allows a leap second and years that are none of four digits in UTC; no record here could hold them. */
const UNTELLABLE = [
  "2016-12-31T23:59:60Z",
  "2026-01-01T00:00:00+01",
  "9999-12-31T23:59:59-01:00",
  "0000-01-01T00:00:00+01:00",
  // Of years that no shop has.
  "1969-12-31T23:59:59Z",
  "1970-01-01T00:00:00+01:00",
  "3000-01-01T00:00:00Z",
  "2999-12-31T23:59:59-01:00",
  "9026-03-02T08:00:00Z",
];
/** The same moments with lower-case letters and another offset. */
const ODD = "2026-01-01t09:00:00.5+09:00";

const isMoment = ({ schema }: ReturnType<typeof bodySchemas>[number]) => schema.format === "date-time";
const inBodies = bodySchemas()
  .filter(isMoment)
  .map(({ at }) => at.split("/"))
  .filter((parts) => parts.length === 2)
  .map(([id = "", field = ""]) => [id, field] as const);

test("there are operations that take a time", () => {
  expect(inBodies.length).toBeGreaterThan(8);
});

test.each(inBodies)("%s: a %s that no clock shows is refused by name", async (id, field) => {
  const operation = OPERATIONS.find((each) => each.id === id);
  if (operation === undefined) return expect.unreachable(id);
  const before = await lastSequence(shop);
  for (const moment of UNTELLABLE) {
    const { status, body, text } = await shop.ask(operation.method, urlOf(operation, furnished.ids), {
      body: { ...bodyOf(operation, furnished.ids), [field]: moment },
      headers: { "If-Match": "*" },
      key: furnished.keys.manager,
    });
    expect(status, text).toBe(422);
    expect(body.errors.map(({ pointer }: { pointer: string }) => pointer)).toContain(`/${field}`);
  }
  expect(await lastSequence(shop)).toBe(before);
});

test("a query that asks from or until such a time is refused by name", async () => {
  const asked = parameterSchemas().filter(({ name }) => name === "since" || name === "until");
  expect(asked.length).toBeGreaterThan(3);
  for (const { at, name } of asked) {
    const operation = OPERATIONS.find(({ id }) => at === `${id}?${name}`);
    for (const moment of UNTELLABLE) {
      const answer = await shop.ask("GET", `${operation?.path}?${name}=${encodeURIComponent(moment)}`);
      expect(answer.status, `${at} ${moment} ${answer.text}`).toBe(422);
      expect(answer.body.errors[0].pointer).toBe(`/${name}`);
    }
  }
});

test("a day of a year that no shop has is refused by name", async () => {
  for (const purchasedOn of ["1969-12-31", "3000-01-01", "0202-06-01", "2026-02-30"]) {
    const { status, body } = await shop.ask("POST", "/v1/bits", { body: { ...PANEL_BIT, purchasedOn } });
    expect([status, body.errors[0].pointer], purchasedOn).toEqual([422, "/purchasedOn"]);
  }
  for (const purchasedOn of ["1970-01-01", "2999-12-31"])
    expect((await shop.ask("POST", "/v1/bits", { body: { ...PANEL_BIT, purchasedOn } })).status).toBe(201);
});

test("a time is kept in UTC, however it was written", async () => {
  const { bitId = "" } = furnished.ids;
  const inspection = await made(shop, `/v1/bits/${bitId}/inspections`, {
    ...{ findings: [], effect: "note", inspectedAt: ODD },
  });
  expect(inspection.inspectedAt).toBe("2026-01-01T00:00:00.500Z");
});
