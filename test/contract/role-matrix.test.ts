import { SCOPES } from "@rimwise/shop";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { packedClient } from "../sdk/packed.ts";
import { bodyOf, OPERATIONS, type Operation, urlOf } from "./bodies.ts";
import { lastSequence, made } from "./crib.ts";
import { type Furnished, furnish } from "./furnish.ts";
import { openShop, type Shop } from "./shop.ts";

const ROLES = ["manager", "instructor", "member", "student"] as const;
type Role = (typeof ROLES)[number];

const EVERYONE: readonly Role[] = ["manager", "instructor", "member", "student"];
const MEMBERS: readonly Role[] = ["manager", "instructor", "member"];
const STAFF: readonly Role[] = ["manager", "instructor"];
const MANAGERS: readonly Role[] = ["manager"];

/** Who may do what, written out by hand: a changed line here is a changed decision about the shop. */
const MAY: Readonly<Record<string, readonly Role[]>> = {
  "self:read": EVERYONE,
  "bits:read": MEMBERS,
  "bits:write": STAFF,
  "bits:hold": EVERYONE,
  "places:read": MEMBERS,
  "places:write": STAFF,
  "routers:read": MEMBERS,
  "routers:write": STAFF,
  "woods:read": EVERYONE,
  "plans:compute": MEMBERS,
  "plans:read": MEMBERS,
  "plans:write": STAFF,
  "jobs:read": EVERYONE,
  "jobs:write": MEMBERS,
  "loans:read": EVERYONE,
  "loans:write": EVERYONE,
  "inspections:read": MEMBERS,
  "inspections:write": STAFF,
  "sharpenings:read": MEMBERS,
  "sharpenings:write": STAFF,
  "trials:read": MEMBERS,
  "trials:write": STAFF,
  "uses:read": EVERYONE,
  "uses:write": EVERYONE,
  "stock:read": STAFF,
  "people:read": STAFF,
  "people:write": MANAGERS,
  "policy:write": MANAGERS,
  "courses:read": EVERYONE,
  "courses:write": STAFF,
  "qualifications:read": EVERYONE,
  "qualifications:write": STAFF,
  "approvals:read": EVERYONE,
  "approvals:write": STAFF,
  "checks:ask": EVERYONE,
  "checks:read": EVERYONE,
  "events:read": STAFF,
  "events:checkpoint": STAFF,
  "backups:manage": MANAGERS,
  "keys:manage": MANAGERS,
  "metrics:read": MANAGERS,
};

/** What anybody may ask without a key. */
const OPEN_TO_ALL = [
  "getApiDescription",
  "getApprovalStatus",
  "getClientPackage",
  "getJsonWebKeySet",
  "getLiveness",
  "getReadiness",
  "getVersion",
];

let shop: Shop;
let furnished: Furnished;
/** For each scope a manager's key that holds every other one, and one that holds it alone. */
const narrowed = new Map<string, { readonly without: string; readonly alone: string }>();

beforeAll(async () => {
  shop = await openShop({}, undefined, afterAll, packedClient().tarball);
  furnished = await furnish((path, body, key) => made(shop, path, body, key));
  const keyWith = async (scopes: readonly string[]) =>
    (await made(shop, "/v1/keys", { name: "Narrowed", personId: furnished.ids["managerId"], scopes }))
      .key as string;
  for (const scope of Object.keys(MAY)) {
    const others = Object.keys(MAY).filter((each) => each !== scope);
    narrowed.set(scope, { without: await keyWith(others), alone: await keyWith([scope]) });
  }
}, 60_000);

function ask(operation: Operation, key: string | null) {
  const { ids } = furnished;
  // A student who names a person may name nobody but themselves.
  const own = key === furnished.keys.student ? { ...ids, personId: ids["studentId"] ?? "" } : ids;
  const { takesJson, id, method } = operation;
  const isFile = id === "importBits";
  return shop.ask(method, urlOf(operation, own), {
    key,
    headers: { "If-Match": "*", ...(isFile && { "content-type": "text/csv" }) },
    ...(takesJson && { body: bodyOf(operation, own) }),
    ...(isFile && { body: "name\n" }),
  });
}

/** What a HEAD of the same path is answered with: as its GET is, or there is none. */
async function headStatus(operation: Operation, key: string | null): Promise<number> {
  const headers = key === null ? {} : { authorization: `Bearer ${key}` };
  const { statusCode } = await shop.app.inject({
    method: "HEAD",
    url: urlOf(operation, furnished.ids),
    headers,
  });
  return statusCode;
}

const named = (operations: readonly Operation[]) => operations.map((each) => [each.id, each] as const);
const inOrder = [...OPERATIONS].sort((a, b) => Number(a.method !== "GET") - Number(b.method !== "GET"));
const guarded = inOrder.filter(({ isPublic }) => !isPublic);

test("the table names every scope, and every operation needs one of them or is open to all", () => {
  expect(Object.keys(MAY).sort()).toEqual(Object.keys(SCOPES).sort());
  for (const { id, scope } of guarded) expect(Object.keys(MAY), id).toContain(scope);
  const open = OPERATIONS.filter(({ isPublic }) => isPublic);
  expect(open.map(({ id }) => id).sort()).toEqual(OPEN_TO_ALL);
  for (const { id, scope } of open) expect(scope, id).toBeUndefined();
  const used = new Set(guarded.map(({ scope }) => scope));
  expect(Object.keys(MAY).filter((scope) => !used.has(scope))).toEqual([]);
});

describe("a caller without the scope is refused and changes nothing", () => {
  test.each(named(guarded))("%s", async (_id, operation) => {
    const scope = operation.scope ?? "";
    const before = await lastSequence(shop);
    const without = await ask(operation, null);
    expect([without.status, without.body.code]).toEqual([401, "key-missing"]);
    if (operation.method === "GET") expect([401, 405]).toContain(await headStatus(operation, null));
    const refused = ROLES.filter((role) => !MAY[scope]?.includes(role)).map((role) => furnished.keys[role]);
    for (const key of [...refused, narrowed.get(scope)?.without ?? ""]) {
      const answer = await ask(operation, key);
      expect([answer.status, answer.body.code]).toEqual([403, "scope-missing"]);
      if (operation.method === "GET") expect([403, 405]).toContain(await headStatus(operation, key));
    }
    expect(await lastSequence(shop)).toBe(before);
  });
});

describe("a caller with the scope is let through", () => {
  const ending = guarded.filter(({ isEndless }) => !isEndless);

  test.each(named(ending))("%s", async (_id, operation) => {
    const scope = operation.scope ?? "";
    // The member comes first: what the manager removes is gone for all.
    const allowed = [...ROLES].reverse().filter((role) => MAY[scope]?.includes(role));
    for (const key of [...allowed.map((role) => furnished.keys[role]), narrowed.get(scope)?.alone ?? ""]) {
      const { status, text } = await ask(operation, key);
      expect([401, 403], `${operation.id} ${text}`).not.toContain(status);
      expect(status, `${operation.id} ${text}`).toBeLessThan(500);
    }
  });
});

test.each(OPEN_TO_ALL)("%s is answered without a key, and with any", async (id) => {
  const operation = OPERATIONS.find((each) => each.id === id);
  if (operation === undefined) return expect.unreachable(id);
  for (const key of [null, "rw_mistyped", furnished.keys.member]) {
    expect((await ask(operation, key)).status).toBe(200);
  }
});
