import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addSomebody, lastSequence, made } from "./crib.ts";
import { openShop, type Shop } from "./shop.ts";

let shop: Shop;

beforeAll(async () => {
  shop = await openShop({}, undefined, afterAll);
});

const narrowed = async (...scopes: string[]) =>
  (await made(shop, "/v1/keys", { name: "Narrow", role: "manager", scopes })).key as string;

/** Everything a narrowed key could try to get more by, and whether it got it: refused, with nothing changed. */
async function refused(method: "POST" | "PATCH", url: string, body: object, key: string): Promise<void> {
  const before = await lastSequence(shop);
  const answer = await shop.ask(method, url, { body, key, headers: { "If-Match": "*" } });
  expect([answer.status, answer.body.code], `${url} ${JSON.stringify(body)}`).toEqual([403, "scope-missing"]);
  expect(await lastSequence(shop)).toBe(before);
}

describe("a key narrowed to people:write", () => {
  test.each(["manager", "instructor"])("makes nobody a %s", async (role) => {
    const key = await narrowed("people:write");
    const { id } = await addSomebody(shop, "member");
    await refused("POST", "/v1/people", { name: "Deputy", role }, key);
    await refused("PATCH", `/v1/people/${id}`, { role }, key);
    await refused(
      "POST",
      "/v1/people/batch",
      {
        data: [
          { name: "One", role: "member" },
          { name: "Two", role },
        ],
      },
      key,
    );
  });

  test("gives somebody who has keys no wider role, and brings nobody back whose keys open more", async () => {
    const key = await narrowed("people:write");
    const student = await addSomebody(shop, "student");
    await refused("PATCH", `/v1/people/${student.id}`, { role: "member" }, key);
    const gone = await addSomebody(shop, "manager");
    const change = (body: object) =>
      shop.ask("PATCH", `/v1/people/${gone.id}`, { body, key, headers: { "If-Match": "*" } });
    expect((await change({ state: "left" })).status).toBe(200);
    await refused("PATCH", `/v1/people/${gone.id}`, { state: "active" }, key);
    await refused("PATCH", `/v1/people/${gone.id}`, { state: "active", role: "instructor" }, key);
    expect((await change({ role: "student" })).status).toBe(200);
  });

  test("enters members and students, names them, and takes roles away", async () => {
    const key = await narrowed("people:write");
    await made(shop, "/v1/people", { name: "New", role: "member" }, key);
    const { id } = await addSomebody(shop, "instructor");
    const answer = await shop.ask("PATCH", `/v1/people/${id}`, {
      body: { role: "student", notes: "Back to the bench." },
      headers: { "If-Match": "*" },
      key,
    });
    expect(answer.body.role).toBe("student");
  });
});

describe("a key narrowed to keys:manage", () => {
  test("creates no key that opens more than itself", async () => {
    const key = await narrowed("keys:manage", "bits:read");
    const { id } = await addSomebody(shop, "manager");
    for (const power of [
      { role: "manager" },
      { role: "member" },
      { role: "manager", scopes: ["keys:manage", "people:write"] },
      { personId: id },
      { personId: id, scopes: ["backups:manage"] },
    ]) {
      await refused("POST", "/v1/keys", { name: "More", ...power }, key);
    }
    await made(shop, "/v1/keys", { name: "Less", role: "manager", scopes: ["bits:read"] }, key);
    await made(shop, "/v1/keys", { name: "Same", personId: id, scopes: ["keys:manage", "bits:read"] }, key);
  });

  test("gets no secret of a wider key by rotating it, but may revoke one that was lost", async () => {
    const key = await narrowed("keys:manage", "bits:read");
    const manager = await addSomebody(shop, "manager");
    await refused("POST", `/v1/keys/${manager.keyId}/rotate`, {}, key);
    const own = await made(shop, "/v1/keys", { name: "Own", role: "manager", scopes: ["bits:read"] }, key);
    await made(shop, `/v1/keys/${own.id}/rotate`, {}, key);
    expect((await shop.ask("POST", `/v1/keys/${manager.keyId}/revoke`, { key })).status).toBe(200);
  });

  test("creates no wider key with people, either", async () => {
    const key = await narrowed("keys:manage", "people:write", "self:read");
    const somebody = (given: object) => ({ data: [{ name: "Robin", role: "student", key: given }] });
    await refused("POST", "/v1/people/batch", somebody({ name: "Own" }), key);
    await refused("POST", "/v1/people/batch", somebody({ name: "Own", scopes: ["loans:write"] }), key);
    const { data } = await made(
      shop,
      "/v1/people/batch",
      somebody({ name: "Own", scopes: ["self:read"] }),
      key,
    );
    const me = await shop.ask("GET", "/v1/me", { key: data[0].key.key });
    expect(me.body.scopes).toEqual(["self:read"]);
  });
});
