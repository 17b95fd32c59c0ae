import { describe, expect, test } from "vitest";
import { openShop, PANEL_BIT, TABLE_ROUTER } from "./shop.ts";

const KEYED = { "Idempotency-Key": "drawer 3" };
const SENT = { "Idempotency-Key": "drawer-3" };

describe("the same creating request again", () => {
  test("gets the same bytes, says so, and creates nothing more", async () => {
    const { ask } = await openShop();
    const first = await ask("POST", "/v1/bits", { body: PANEL_BIT, headers: SENT });
    // The order of members is no difference.
    const reordered = Object.fromEntries(Object.entries(PANEL_BIT).reverse());
    const second = await ask("POST", "/v1/bits", { body: reordered, headers: SENT });
    expect(first.headers["idempotent-replayed"]).toBeUndefined();
    expect(second.headers["idempotent-replayed"]).toBe("true");
    expect(second.status).toBe(201);
    expect(second.text).toBe(first.text);
    expect(second.headers["location"]).toBe(first.headers["location"]);
    expect(second.headers["etag"]).toBe(first.headers["etag"]);
    expect((await ask("GET", "/v1/bits")).body.data).toHaveLength(1);
  });

  test("with another body is refused", async () => {
    const { ask } = await openShop();
    await ask("POST", "/v1/bits", { body: PANEL_BIT, headers: SENT });
    const answer = await ask("POST", "/v1/bits", { body: { ...PANEL_BIT, wings: 3 }, headers: SENT });
    expect(answer.status).toBe(422);
    expect(answer.body.code).toBe("idempotency-key-reused");
    expect((await ask("GET", "/v1/bits")).body.data).toHaveLength(1);
  });

  test("sent at the same moment creates one; the others wait or get its answer", async () => {
    const { ask } = await openShop();
    const answers = await Promise.all(
      Array.from({ length: 8 }, () => ask("POST", "/v1/bits", { body: PANEL_BIT, headers: SENT })),
    );
    for (const { status, body, headers } of answers) {
      if (status === 201) continue;
      expect(status).toBe(409);
      expect(body.code).toBe("idempotency-in-progress");
      expect(headers["retry-after"]).toBe("1");
    }
    expect(answers.some(({ status }) => status === 201)).toBe(true);
    expect((await ask("GET", "/v1/bits")).body.data).toHaveLength(1);
  });

  test("is another request under another path or for another caller", async () => {
    const { ask } = await openShop();
    const { body: made } = await ask("POST", "/v1/keys", { body: { name: "Class", role: "instructor" } });
    await ask("POST", "/v1/bits", { body: PANEL_BIT, headers: SENT });
    expect((await ask("POST", "/v1/routers", { body: TABLE_ROUTER, headers: SENT })).status).toBe(201);
    const other = await ask("POST", "/v1/bits", { body: PANEL_BIT, headers: SENT, key: made.key });
    expect(other.headers["idempotent-replayed"]).toBeUndefined();
    expect((await ask("GET", "/v1/bits")).body.data).toHaveLength(2);
  });

  test("is a new one after 24 hours", async () => {
    let now = new Date("2026-03-02T08:00:00Z");
    const { ask } = await openShop({}, () => now);
    await ask("POST", "/v1/bits", { body: PANEL_BIT, headers: SENT });
    now = new Date("2026-03-03T07:59:59Z");
    const before = await ask("POST", "/v1/bits", { body: PANEL_BIT, headers: SENT });
    expect(before.headers["idempotent-replayed"]).toBe("true");
    now = new Date("2026-03-03T08:00:00Z");
    const after = await ask("POST", "/v1/bits", { body: PANEL_BIT, headers: SENT });
    expect(after.status).toBe(201);
    expect(after.headers["idempotent-replayed"]).toBeUndefined();
    expect((await ask("GET", "/v1/bits")).body.data).toHaveLength(2);
  });

  test("gets the same decided refusal, which says so as documented", async () => {
    const { ask } = await openShop();
    const take = () =>
      ask("POST", "/v1/places/place_none/stock-takes", { body: { bitIds: [] }, headers: SENT });
    const first = await take();
    const second = await take();
    expect(first.status).toBe(404);
    expect(second.text).toBe(first.text);
    expect(second.headers["idempotent-replayed"]).toBe("true");
  });

  test("may be mended after a refusal: what was not valid is not kept", async () => {
    const { ask } = await openShop();
    const refused = await ask("POST", "/v1/bits", { body: { ...PANEL_BIT, wings: 0 }, headers: SENT });
    expect(refused.status).toBe(422);
    expect((await ask("POST", "/v1/bits", { body: PANEL_BIT, headers: SENT })).status).toBe(201);
  });

  test("never shows a key's secret twice, nor keeps it", async () => {
    const { ask } = await openShop();
    const body = { name: "Bench 3", role: "member" };
    const first = await ask("POST", "/v1/keys", { body, headers: SENT });
    const second = await ask("POST", "/v1/keys", { body, headers: SENT });
    expect(first.status).toBe(201);
    expect(second.status).toBe(409);
    expect(second.body.code).toBe("secret-shown-once");
    expect(second.body.detail).toContain(first.body.id);
    expect(second.text).not.toContain(first.body.key);
    expect((await ask("GET", "/v1/keys")).body.data).toHaveLength(2);
  });
});

test.each([
  ["blanks", KEYED],
  ["256 characters", { "Idempotency-Key": "k".repeat(256) }],
])("an Idempotency-Key of %s is refused", async (_name, headers) => {
  const { ask } = await openShop();
  const answer = await ask("POST", "/v1/bits", { body: PANEL_BIT, headers });
  expect(answer.status).toBe(422);
  expect(answer.body.errors[0]).toMatchObject({ in: "header", pointer: "/Idempotency-Key" });
  expect((await ask("GET", "/v1/bits")).body.data).toEqual([]);
});
