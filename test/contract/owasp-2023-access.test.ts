import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { mistyped } from "../../services/shop/testing/mistyped.ts";
import { bodyOf, OPERATIONS, type Operation, unrealUrlOf, urlOf } from "./bodies.ts";
import { addBit, addSomebody, lastSequence, made, statusFor } from "./crib.ts";
import { type Furnished, furnish } from "./furnish.ts";
import { openShop, type Shop } from "./shop.ts";
import { PERSONAL, PERSONAL_LISTS, SHARED } from "./whose.ts";

// The tests are named after the OWASP API Security Top 10, edition 2023: owasp.org/API-Security/editions/2023.

let shop: Shop;
let furnished: Furnished;
let stranger: string;

beforeAll(async () => {
  shop = await openShop({}, () => new Date(), afterAll);
  furnished = await furnish((path, body, key) => made(shop, path, body, key));
  stranger = (await addSomebody(shop, "member")).key;
}, 60_000);

const guarded = OPERATIONS.filter(({ isPublic }) => !isPublic);
const withId = guarded.filter(({ path }) => path.includes("{"));

async function ask(operation: Operation, key: string | null, url = urlOf(operation, furnished.ids)) {
  const { method, takesJson } = operation;
  return shop.ask(method, url, {
    key,
    headers: { "If-Match": "*" },
    ...(takesJson && { body: bodyOf(operation, furnished.ids) }),
  });
}

describe("API1:2023 Broken Object Level Authorization", () => {
  test("every operation on one object that members may call is known to be personal or shared", async () => {
    const scopes: readonly string[] = (await shop.ask("GET", "/v1/me", { key: stranger })).body.scopes;
    const open = withId.filter(({ scope = "" }) => scopes.includes(scope)).map(({ id }) => id);
    expect(open.sort()).toEqual([...PERSONAL, ...SHARED].sort());
  });

  test.each(PERSONAL)("%s: another member is answered as if it did not exist", async (id) => {
    const operation = withId.find((each) => each.id === id);
    if (operation === undefined) return expect.unreachable(id);
    const before = await lastSequence(shop);
    const theirs = await ask(operation, stranger);
    // The refusal is the one for what nobody has: it reveals nothing.
    expect([403, 404]).toContain(theirs.status);
    const unreal = await ask(operation, stranger, unrealUrlOf(operation));
    const withoutIds = (text: string) => text.replaceAll(/\w+_[0-9a-f]+/g, "…");
    expect([theirs.status, withoutIds(theirs.body.detail)]).toEqual([
      unreal.status,
      withoutIds(unreal.body.detail),
    ]);
    expect(await lastSequence(shop)).toBe(before);
    if (operation.method === "GET") expect((await ask(operation, furnished.keys.member)).status).toBe(200);
  });

  test.each(PERSONAL_LISTS)("%s: another member sees nothing of it, whatever they filter by", async (id) => {
    const operation = OPERATIONS.find((each) => each.id === id);
    if (operation === undefined) return expect.unreachable(id);
    const own = await ask(operation, furnished.keys.member);
    expect(own.body.data.length).toBeGreaterThan(0);
    for (const query of [
      "",
      `?personId=${furnished.ids["personId"]}`,
      `?courseId=${furnished.ids["courseId"]}`,
    ]) {
      const answer = await shop.ask("GET", `${operation.path}${query}`, { key: stranger });
      if (answer.status === 200) expect(answer.body.data).toEqual([]);
      else expect([403, 404, 422], answer.text).toContain(answer.status);
    }
  });

  test("an id that was guessed finds nothing and harms nothing, for any role", async () => {
    const before = await lastSequence(shop);
    for (const operation of withId) {
      for (const key of Object.values(furnished.keys)) {
        for (const guess of ["none_0", "%2e%2e%2f", "'%20OR%201=1--", "%00", "__proto__", "constructor"]) {
          const url = operation.path.replaceAll(/\{\w+\}/g, guess);
          const { status, text } = await shop.ask(operation.method, url, {
            key,
            headers: { "If-Match": "*" },
            ...(operation.takesJson && { body: bodyOf(operation, furnished.ids) }),
          });
          expect([403, 404, 422], `${operation.method} ${url} ${text}`).toContain(status);
        }
      }
    }
    expect(await lastSequence(shop)).toBe(before);
  }, 120_000);
});

describe("API2:2023 Broken Authentication", () => {
  let expired: string;
  let revoked: string;
  let rotated: string;

  beforeAll(async () => {
    const manager = { name: "x", role: "manager" };
    const soon = await made(shop, "/v1/keys", {
      ...manager,
      expiresAt: new Date(Date.now() + 700).toISOString(),
    });
    const gone = await made(shop, "/v1/keys", manager);
    await shop.ask("POST", `/v1/keys/${gone.id}/revoke`);
    const old = await made(shop, "/v1/keys", manager);
    await made(shop, `/v1/keys/${old.id}/rotate`, { overlapMinutes: 0 });
    [expired, revoked, rotated] = [soon.key, gone.key, old.key];
    while ((await statusFor(shop, expired)) === 200) await new Promise((resolve) => setTimeout(resolve, 100));
  });

  test.each([
    ["no key", (): Record<string, string> => ({})],
    ["a mistyped key", () => bearer(mistyped(shop.managerKey))],
    ["an expired key", () => bearer(expired)],
    ["a revoked key", () => bearer(revoked)],
    ["the secret before a rotation", () => bearer(rotated)],
    ["a key id for a secret", () => bearer(furnished.ids["keyId"] ?? "")],
    [
      "a key sent as a password",
      () => ({ authorization: `Basic ${Buffer.from(`x:${shop.managerKey}`).toString("base64")}` }),
    ],
    [
      "a key in a header of its own",
      () => ({ "x-api-key": shop.managerKey, cookie: `key=${shop.managerKey}` }),
    ],
    ["two keys in one header", () => bearer(`${shop.managerKey}, ${shop.managerKey}`)],
    ["nothing after the word Bearer", () => ({ authorization: "Bearer " })],
  ])(
    "%s opens no operation at all",
    async (_name, headersOf) => {
      for (const operation of guarded) {
        const { statusCode, headers, body } = await shop.app.inject({
          method: operation.method,
          url: urlOf(operation, furnished.ids),
          headers: { ...headersOf(), "if-match": "*" },
          ...(operation.takesJson && { payload: bodyOf(operation, furnished.ids) }),
        });
        expect(statusCode, `${operation.id} ${body}`).toBe(401);
        expect(headers["www-authenticate"]).toMatch(/^Bearer realm=/);
      }
    },
    60_000,
  );

  test("a key in the query opens nothing, and no operation takes one there", async () => {
    for (const name of ["key", "access_token", "api_key", "token"]) {
      const url = `/v1/bits?${name}=${shop.managerKey}`;
      expect((await shop.ask("GET", url, { key: null })).status).toBe(401);
      expect((await shop.ask("GET", url)).status).toBe(422);
    }
  });
});

describe("API5:2023 Broken Function Level Authorization", () => {
  // Every operation for every role is in role-matrix.test.ts; here are the ways around it.
  test.each([
    ["another case", "/V1/Keys"],
    ["a stroke at the end", "/v1/keys/"],
    ["two strokes", "//v1//keys"],
    ["a detour", "/v1/bits/../keys"],
    ["an encoded detour", "/v1/bits/%2e%2e/keys"],
    ["an encoded stroke", "/v1%2Fkeys"],
    ["a semicolon", "/v1/keys;a=b"],
    ["a query that names another method", "/v1/keys?_method=GET"],
  ])("a member reaches no manager's operation by %s", async (_name, url) => {
    const answer = await shop.ask("GET", url, { key: furnished.keys.member });
    expect([400, 403, 404], answer.text).toContain(answer.status);
    expect(answer.text).not.toContain("expiresAt");
  });

  test("a header does not turn one method into another", async () => {
    const bit = await addBit(shop);
    for (const name of ["x-http-method-override", "x-method-override", "x-http-method"]) {
      const answer = await shop.ask("GET", `/v1/bits/${bit.id}`, {
        headers: { [name]: "DELETE", "If-Match": "*" },
      });
      expect(answer.body.id).toBe(bit.id);
    }
    expect((await shop.ask("GET", `/v1/bits/${bit.id}`)).status).toBe(200);
  });

  test("a role cannot be given in a request", async () => {
    for (const headers of [{ "x-role": "manager" }, { role: "manager" }, { "x-forwarded-user": "manager" }]) {
      expect((await shop.ask("GET", "/v1/keys", { key: furnished.keys.member, headers })).status).toBe(403);
    }
  });
});

function bearer(key: string): Record<string, string> {
  return { authorization: `Bearer ${key}` };
}
