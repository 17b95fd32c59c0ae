import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { everyRowOf } from "../../services/shop/testing/behind-the-service.ts";
import { addSomebody, statusFor } from "./crib.ts";
import { openShop, PANEL_BIT, type Shop } from "./shop.ts";

const START = "2026-03-02T08:00:00.000Z";
let now = new Date(START);
let shop: Shop;

beforeAll(async () => {
  shop = await openShop({}, () => now, afterAll);
});
beforeEach(() => {
  now = new Date(START);
});

const minutesOn = (minutes: number) => new Date(new Date(START).getTime() + minutes * 60_000);
const change = (personId: string, body: object, key?: string) =>
  shop.ask("PATCH", `/v1/people/${personId}`, {
    body,
    headers: { "If-Match": "*" },
    ...(key !== undefined && { key }),
  });
const rotate = (keyId: string, body: object = {}, headers: Record<string, string> = {}) =>
  shop.ask("POST", `/v1/keys/${keyId}/rotate`, { body, headers });

describe("a person's key", () => {
  test("has the role that the person has at that moment, at once after each change", async () => {
    const { id, key } = await addSomebody(shop, "member");
    const addsBit = async () => (await shop.ask("POST", "/v1/bits", { key, body: PANEL_BIT })).status;
    expect(await addsBit()).toBe(403);
    await change(id, { role: "instructor" });
    expect(await addsBit()).toBe(201);
    expect((await shop.ask("GET", "/v1/me", { key })).body).toMatchObject({
      role: "instructor",
      personId: id,
    });
    await change(id, { role: "member" });
    expect(await addsBit()).toBe(403);
  });

  test("opens nothing once they have left, and again when they are back", async () => {
    const { id, key } = await addSomebody(shop, "instructor");
    expect((await change(id, { state: "left" })).status).toBe(200);
    expect(await statusFor(shop, key)).toBe(401);
    const forLeft = await shop.ask("POST", "/v1/keys", { body: { name: "Phone", personId: id } });
    expect([forLeft.status, forLeft.body.code]).toEqual([409, "person-left"]);
    await change(id, { state: "active" });
    expect(await statusFor(shop, key)).toBe(200);
  });

  test.each([
    ["a role and a person", (id: string) => ({ name: "x", role: "member", personId: id }), "/personId"],
    ["neither", () => ({ name: "x" }), "/role"],
    ["a person nobody knows", () => ({ name: "x", personId: "person_0" }), "/personId"],
  ])("is refused with %s", async (_name, body, pointer) => {
    const { id } = await addSomebody(shop, "member");
    const answer = await shop.ask("POST", "/v1/keys", { body: body(id) });
    expect(answer.status).toBe(422);
    expect(answer.body.errors.map((each: { pointer: string }) => each.pointer)).toEqual([pointer]);
  });
});

describe("a narrowed key", () => {
  test("opens what it names and nothing else of its role", async () => {
    const { key } = await addSomebody(shop, "manager", { scopes: ["bits:read", "self:read"] });
    expect((await shop.ask("GET", "/v1/bits", { key })).status).toBe(200);
    expect((await shop.ask("GET", "/v1/routers", { key })).body.code).toBe("scope-missing");
    expect((await shop.ask("POST", "/v1/bits", { key, body: PANEL_BIT })).status).toBe(403);
    expect((await shop.ask("GET", "/v1/me", { key })).body.scopes).toEqual(["self:read", "bits:read"]);
  });

  test("never holds more than its role", async () => {
    const { key } = await addSomebody(shop, "member", { scopes: ["bits:read", "keys:manage", "self:read"] });
    expect((await shop.ask("GET", "/v1/keys", { key })).status).toBe(403);
    expect((await shop.ask("GET", "/v1/me", { key })).body.scopes).toEqual(["self:read", "bits:read"]);
  });

  test.each([[[]], [["bits:everything"]], [["bits:read", "bits:read"]]])(
    "is refused with the scopes %j",
    async (scopes) => {
      const answer = await shop.ask("POST", "/v1/keys", { body: { name: "x", role: "member", scopes } });
      expect(answer.status).toBe(422);
    },
  );
});

describe("a key that expires", () => {
  test("opens until its last moment, and not at it", async () => {
    const { key } = await addSomebody(shop, "member", { expiresAt: "2026-03-02T10:00:00+01:00" });
    now = new Date("2026-03-02T08:59:59.999Z");
    expect(await statusFor(shop, key)).toBe(200);
    now = new Date("2026-03-02T09:00:00.000Z");
    expect(await statusFor(shop, key)).toBe(401);
  });

  test("is not given a new secret that would open nothing", async () => {
    const { keyId } = await addSomebody(shop, "member", { expiresAt: minutesOn(60).toISOString() });
    now = minutesOn(60);
    const answer = await rotate(keyId);
    expect([answer.status, answer.body.code]).toEqual([409, "key-ended"]);
  });

  test.each([
    "2026-03-02T08:00:00Z",
    "2020-01-01T00:00:00Z",
    "2027-06-30T23:59:60Z",
    "2027-01-01T00:00:00+01",
  ])("cannot end at %s: past, or no time that every program reads alike", async (expiresAt) => {
    const answer = await shop.ask("POST", "/v1/keys", { body: { name: "x", role: "member", expiresAt } });
    expect(answer.status).toBe(422);
    expect(answer.body.errors).toMatchObject([{ pointer: "/expiresAt" }]);
  });
});

describe("a rotation", () => {
  test("leaves two secrets in force until the old one's time is over", async () => {
    const { keyId, key: old } = await addSomebody(shop, "member");
    const { status, body, headers } = await rotate(keyId, { overlapMinutes: 30 });
    expect(status).toBe(201);
    expect(body).toMatchObject({ id: keyId, previousUntil: minutesOn(30).toISOString(), version: 2 });
    expect(headers["cache-control"]).toBe("no-store");
    now = minutesOn(29.99);
    expect([await statusFor(shop, old), await statusFor(shop, body.key)]).toEqual([200, 200]);
    now = minutesOn(30);
    expect([await statusFor(shop, old), await statusFor(shop, body.key)]).toEqual([401, 200]);
  });

  test("with no overlap ends the old secret at once; by default that is a day later", async () => {
    const { keyId, key: first } = await addSomebody(shop, "member");
    const second = (await rotate(keyId, { overlapMinutes: 0 })).body;
    expect([await statusFor(shop, first), await statusFor(shop, second.key)]).toEqual([401, 200]);
    const third = (await rotate(keyId)).body;
    expect(third.previousUntil).toBe(minutesOn(24 * 60).toISOString());
  });

  test("done twice ends the oldest secret at once", async () => {
    const { keyId, key: first } = await addSomebody(shop, "member");
    const second = (await rotate(keyId)).body.key;
    const third = (await rotate(keyId)).body.key;
    const statuses = await Promise.all([first, second, third].map((key) => statusFor(shop, key)));
    expect(statuses).toEqual([401, 200, 200]);
  });

  test("sent again with its Idempotency-Key neither rotates again nor shows the secret twice", async () => {
    const { keyId, key: first } = await addSomebody(shop, "member");
    const sent = { "Idempotency-Key": `rotate-${keyId}` };
    const one = await rotate(keyId, {}, sent);
    const two = await rotate(keyId, {}, sent);
    expect([two.status, two.body.code]).toEqual([409, "secret-shown-once"]);
    expect(two.headers["idempotent-replayed"]).toBe("true");
    expect(two.text).not.toContain("rw_");
    expect((await shop.ask("GET", `/v1/keys/${keyId}`)).body.version).toBe(2);
    expect([await statusFor(shop, first), await statusFor(shop, one.body.key)]).toEqual([200, 200]);
  });

  test("of many at the same moment ends with exactly two secrets in force", async () => {
    const { keyId, key: first } = await addSomebody(shop, "member");
    const answers = await Promise.all(Array.from({ length: 4 }, () => rotate(keyId)));
    const keys = [first, ...answers.flatMap(({ status, body }) => (status === 201 ? [body.key] : []))];
    const statuses = await Promise.all(keys.map((key) => statusFor(shop, key)));
    expect(statuses.filter((status) => status === 200)).toHaveLength(2);
  });

  test("of a revoked key is refused, and revoking ends both secrets", async () => {
    const { keyId, key: first } = await addSomebody(shop, "member");
    const second = (await rotate(keyId)).body.key;
    await shop.ask("POST", `/v1/keys/${keyId}/revoke`);
    expect([await statusFor(shop, first), await statusFor(shop, second)]).toEqual([401, 401]);
    expect((await rotate(keyId)).body.code).toBe("key-ended");
  });
});

test("secrets are in no event, list, file or log", async () => {
  const { keyId, key: first } = await addSomebody(shop, "member");
  const second = (await rotate(keyId)).body.key;
  const texts = await Promise.all(
    ["/v1/keys?limit=200", `/v1/keys/${keyId}`, "/v1/events?limit=200", "/v1/people?limit=200"].map(
      async (url) => (await shop.ask("GET", url)).text,
    ),
  );
  for (const text of texts) expect(text).not.toMatch(/rw_|keySha256|previousSha256/i);
  const rows = await everyRowOf(shop);
  for (const key of [first, second]) {
    const secret = key.split("_")[2] ?? "?";
    expect(rows).not.toContain(secret);
    expect(shop.log()).not.toContain(secret);
  }
});
