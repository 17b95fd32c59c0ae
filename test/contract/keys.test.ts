import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { everyRowOf } from "../../services/shop/testing/behind-the-service.ts";
import { mistyped } from "../../services/shop/testing/mistyped.ts";
import { openShop, PANEL_BIT, TABLE_ROUTER } from "./shop.ts";

async function shopWithRoles() {
  const shop = await openShop({}, undefined, afterAll);
  const keyOf = async (role: string) =>
    (await shop.ask("POST", "/v1/keys", { body: { name: `A ${role}`, role } })).body.key as string;
  return { ...shop, instructor: await keyOf("instructor"), member: await keyOf("member") };
}

describe("without a valid key", () => {
  test("a missing key is a 401 that says how to send one", async () => {
    const { ask } = await openShop();
    const answer = await ask("GET", "/v1/bits", { key: null });
    expect(answer.status).toBe(401);
    expect(answer.body.code).toBe("key-missing");
    expect(answer.headers["www-authenticate"]).toMatch(/^Bearer/);
  });

  test("a wrong, mistyped, made-up or misplaced key is a 401", async () => {
    const { ask, managerKey } = await openShop();
    const stranger = await openShop();
    for (const key of [mistyped(managerKey), stranger.managerKey, "rw_", "x".repeat(5000)]) {
      const answer = await ask("GET", "/v1/bits", { key });
      expect(answer.status).toBe(401);
      expect(answer.body.code).toBe("key-not-valid");
    }
    const basic = await ask("GET", "/v1/bits", {
      key: null,
      headers: { authorization: `Basic ${managerKey}` },
    });
    expect(basic.status).toBe(401);
  });

  test("nothing is created", async () => {
    const { ask } = await openShop();
    expect((await ask("POST", "/v1/bits", { body: PANEL_BIT, key: null })).status).toBe(401);
    expect((await ask("GET", "/v1/bits")).body.data).toEqual([]);
  });
});

describe("what a role may do", () => {
  let shop: Awaited<ReturnType<typeof shopWithRoles>>;
  beforeAll(async () => {
    shop = await shopWithRoles();
  });

  test.each([
    ["GET", "/v1/bits", "member", 200],
    ["POST", "/v1/bits", "member", 403],
    ["POST", "/v1/bits", "instructor", 201],
    ["GET", "/v1/routers", "member", 200],
    ["POST", "/v1/routers", "member", 403],
    ["POST", "/v1/routers", "instructor", 201],
    ["GET", "/v1/woods", "member", 200],
    ["GET", "/v1/events", "member", 403],
    ["GET", "/v1/events", "instructor", 200],
    ["GET", "/v1/keys", "member", 403],
    ["GET", "/v1/keys", "instructor", 403],
    ["POST", "/v1/keys", "instructor", 403],
  ] as const)("%s %s by a %s is %i", async (method, url, role, status) => {
    const bodies = {
      "/v1/bits": PANEL_BIT,
      "/v1/routers": TABLE_ROUTER,
      "/v1/keys": { name: "x", role: "manager" },
    };
    const body = method === "POST" && url in bodies ? bodies[url as keyof typeof bodies] : undefined;
    const answer = await shop.ask(method, url, { key: shop[role], ...(body && { body }) });
    expect(answer.status).toBe(status);
  });

  test("a 403 reveals nothing of what exists", async () => {
    const { ask, member, managerKey } = shop;
    const { body } = await ask("GET", "/v1/keys", { key: managerKey });
    const real = await ask("GET", `/v1/keys/${body.data[0].id}`, { key: member });
    const unreal = await ask("GET", "/v1/keys/key_nothing", { key: member });
    expect(real.status).toBe(403);
    expect(unreal.status).toBe(403);
    expect(real.body.detail).toBe(unreal.body.detail);
  });
});

describe("a key", () => {
  test("is shown once and never kept: the file holds its digest alone", async () => {
    const { ask, file, managerKey } = await openShop();
    const created = await ask("POST", "/v1/keys", { body: { name: "Bench 3", role: "member" } });
    expect(created.body.key).toMatch(/^rw(_[0-9a-z]{8}){4}$/);
    expect(created.headers["cache-control"]).toBe("no-store");
    const read = await ask("GET", `/v1/keys/${created.body.id}`);
    expect(read.text).not.toContain("rw_");
    const { body: events } = await ask("GET", "/v1/events");
    expect(JSON.stringify(events)).not.toMatch(/rw_|sha256|Sha256/i);
    const rows = await everyRowOf({ file });
    expect(rows).not.toContain(created.body.key);
    expect(rows).not.toContain(managerKey);
  });

  test("opens nothing from the moment it is revoked", async () => {
    const { ask } = await openShop();
    const { body: made } = await ask("POST", "/v1/keys", {
      body: { name: "Lost tablet", role: "instructor" },
    });
    expect((await ask("GET", "/v1/bits", { key: made.key })).status).toBe(200);
    const revoked = await ask("POST", `/v1/keys/${made.id}/revoke`);
    expect(revoked.status).toBe(200);
    expect(revoked.body.revokedAt).toBeDefined();
    expect((await ask("GET", "/v1/bits", { key: made.key })).status).toBe(401);
    const again = await ask("POST", `/v1/keys/${made.id}/revoke`);
    expect(again.body).toEqual(revoked.body);
  });

  test("of the last manager cannot be revoked, not even by two managers at the same moment", async () => {
    const { ask, managerKey } = await openShop();
    const { body: keys } = await ask("GET", "/v1/keys");
    const firstId = keys.data[0].id;
    const alone = await ask("POST", `/v1/keys/${firstId}/revoke`);
    expect(alone.status).toBe(409);
    expect(alone.body.code).toBe("last-manager");
    const { body: second } = await ask("POST", "/v1/keys", { body: { name: "Deputy", role: "manager" } });
    const answers = await Promise.all([
      ask("POST", `/v1/keys/${second.id}/revoke`, { key: managerKey }),
      ask("POST", `/v1/keys/${firstId}/revoke`, { key: second.key }),
    ]);
    expect(answers.filter(({ status }) => status === 200)).toHaveLength(1);
    const stillOpen = await Promise.all(
      [managerKey, second.key].map(async (key) => (await ask("GET", "/v1/keys", { key })).status),
    );
    expect(stillOpen.sort()).toEqual([200, 401]);
  });

  test("is not written to the log, nor is the header it came in", async () => {
    const { ask, log, managerKey } = await openShop();
    const { body } = await ask("POST", "/v1/keys", { body: { name: "Bench 3", role: "member" } });
    await ask("GET", "/v1/bits", { key: body.key });
    await ask("GET", "/v1/keys", { key: body.key });
    expect(log()).toContain("/v1/keys");
    for (const key of [managerKey, body.key]) {
      const [, , secret = "?"] = key.split("_");
      expect(log()).not.toContain(secret);
    }
    expect(log()).not.toMatch(/bearer/i);
  });
});
