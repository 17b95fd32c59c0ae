import { describe, expect, test } from "vitest";
import { addSomebody, made } from "./crib.ts";
import { openShop } from "./shop.ts";

describe("the last manager", () => {
  /** A shop whose managers are people: the first key is revoked. */
  async function shopOfPeople(count: number) {
    const own = await openShop();
    const managers = [];
    for (let each = 0; each < count; each += 1) managers.push(await addSomebody(own, "manager"));
    const { body } = await own.ask("GET", "/v1/keys");
    const [first] = managers;
    if (first === undefined) throw new Error("a shop needs a manager");
    expect((await own.ask("POST", `/v1/keys/${body.data[0].id}/revoke`, { key: first.key })).status).toBe(
      200,
    );
    return { own, managers, first };
  }

  test.each([{ role: "instructor" }, { state: "left" }])(
    "cannot be made %j, nor lose their key",
    async (to) => {
      const { own, first } = await shopOfPeople(1);
      // A key that is narrowed or about to end does not keep the shop, nor does a manager without a key.
      await made(own, "/v1/keys", { name: "Clock", role: "manager", scopes: ["keys:manage"] }, first.key);
      const expiresAt = new Date(Date.now() + 60_000).toISOString();
      await made(own, "/v1/keys", { name: "For today", role: "manager", expiresAt }, first.key);
      await made(own, "/v1/people", { name: "Deputy", role: "manager" }, first.key);
      const answer = await own.ask("PATCH", `/v1/people/${first.id}`, {
        body: to,
        headers: { "If-Match": "*" },
        key: first.key,
      });
      expect([answer.status, answer.body.code]).toEqual([409, "last-manager"]);
      const revoked = await own.ask("POST", `/v1/keys/${first.keyId}/revoke`, { key: first.key });
      expect([revoked.status, revoked.body.code]).toEqual([409, "last-manager"]);
      expect((await own.ask("GET", "/v1/keys", { key: first.key })).status).toBe(200);
    },
  );

  test("of two, each demoting the other at the same moment, one stays", async () => {
    const { own, managers } = await shopOfPeople(2);
    const [one, other] = managers;
    if (one === undefined || other === undefined) throw new Error("two managers");
    const demote = (whom: string, key: string) =>
      own.ask("PATCH", `/v1/people/${whom}`, {
        body: { role: "member" },
        headers: { "If-Match": "*" },
        key,
      });
    const answers = await Promise.all([demote(other.id, one.key), demote(one.id, other.key)]);
    // The other one is refused for being the last, or has no right to it any more.
    expect(answers.map(({ status }) => status).sort()).toEqual([200, expect.toBeOneOf([403, 409])]);
    const manages = await Promise.all(
      managers.map(async ({ key }) => (await own.ask("GET", "/v1/keys", { key })).status),
    );
    expect(manages.sort()).toEqual([200, 403]);
  });

  test("may lose a key that ends anyway, if another one is in force", async () => {
    const { own, first } = await shopOfPeople(1);
    const expiresAt = new Date(Date.now() + 60_000).toISOString();
    const key = { name: "For today", role: "manager", expiresAt };
    const { id } = await made(own, "/v1/keys", key, first.key);
    const revoked = await own.ask("POST", `/v1/keys/${id}/revoke`, { key: first.key });
    expect(revoked.status).toBe(200);
  });
});
