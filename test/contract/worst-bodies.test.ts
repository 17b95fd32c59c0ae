import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { OPERATIONS, urlOf } from "./bodies.ts";
import { made } from "./crib.ts";
import { type Furnished, furnish } from "./furnish.ts";
import { cpuMs } from "./processor-time.ts";
import { fieldsOf } from "./request-schemas.ts";
import { openShop, type Shop } from "./shop.ts";

/** Fills a body nearly to the limit of what is read. */
const PIECES = 60_000;

let shop: Shop;
let furnished: Furnished;

beforeAll(async () => {
  shop = await openShop({}, () => new Date(), afterAll);
  furnished = await furnish((path, body, key) => made(shop, path, body, key));
}, 60_000);

const withBody = OPERATIONS.filter(({ takesJson, isPublic }) => takesJson && !isPublic);

const WORST: readonly (readonly [string, (field: string) => string])[] = [
  ["thousands of empty objects in its first list", (field) => `{"${field}":[${"{},".repeat(PIECES)}{}]}`],
  [
    "thousands of members nobody knows",
    () => `{${Array.from({ length: PIECES / 4 }, (_, index) => `"x${index}":1`)}}`,
  ],
  ["one text as long as a body", (field) => `{"${field}":"${"x".repeat(PIECES * 3)}"}`],
  ["lists in lists as deep as they may be", (field) => `{"${field}":${"[".repeat(60)}${"]".repeat(60)}}`],
];

describe.each(WORST)("a body with %s", (_name, bodyWith) => {
  test.each(withBody.map((operation) => [operation.id, operation] as const))(
    "is refused by %s about as fast as it is read",
    async (_id, operation) => {
      const [field = "x"] = fieldsOf(operation.bodySchema);
      const body = bodyWith(field);
      const send = () =>
        shop.app.inject({
          method: operation.method,
          url: urlOf(operation, furnished.ids),
          headers: {
            authorization: `Bearer ${shop.managerKey}`,
            "content-type": "application/json",
            "if-match": "*",
          },
          payload: body,
        });
      const { statusCode } = await send();
      expect(statusCode, operation.id).toBeGreaterThanOrEqual(400);
      expect(statusCode, operation.id).toBeLessThan(500);
      const idleMs = await cpuMs(() => shop.app.inject({ url: "/livez" }));
      const readMs = await cpuMs(() => void JSON.parse(body));
      const refusedMs = await cpuMs(send);
      // Held against reading the same text and an idle request; judged member by member it was thousands of times as much.
      expect(refusedMs / (readMs + idleMs + 5), operation.id).toBeLessThan(20);
    },
  );
});
