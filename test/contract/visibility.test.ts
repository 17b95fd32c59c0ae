import { SCOPES } from "@rimwise/shop";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { OPERATIONS, type Operation } from "./bodies.ts";
import { addBit, addSomebody, made } from "./crib.ts";
import { type Furnished, furnish } from "./furnish.ts";
import { openShop, type Shop } from "./shop.ts";

type Row = Readonly<Record<string, unknown>> & { readonly id: string };

/** An operation that answers by pages, with what narrows it. */
type List = Operation & { readonly filters: readonly string[] };

/** Every list of the description. */
const LISTS: readonly List[] = OPERATIONS.filter(
  ({ query, path }) => query.includes("cursor") && !path.includes("{"),
).map((operation) => ({
  ...operation,
  filters: operation.query.filter((name) => name !== "cursor" && name !== "limit"),
}));

/** Filters that are no field of the rows: what each asks for is tested with its own list. */
const OTHER_QUESTIONS: Readonly<Record<string, readonly string[]>> = {
  listBits: [
    "q",
    "kind",
    "diameterMm",
    "shankDiameterMm",
    "toleranceMm",
    "clearance",
    "lacks",
    "mass",
    "marking",
  ],
  listLoans: ["state"],
  listEvents: ["after", "before", "from", "until", "since", "type", "subjectId", "by", "order"],
};

const ROLES = ["manager", "instructor", "member", "student"] as const;

let shop: Shop;
let crowd: readonly Furnished[];

beforeAll(async () => {
  shop = await openShop({}, () => new Date(), afterAll);
  const post = (path: string, body: object, key?: string) => made(shop, path, body, key);
  crowd = [await furnish(post), await furnish(post), await furnish(post)];
}, 120_000);

const get = async (path: string, query: Record<string, string>, key: string) => {
  const answer = await shop.ask("GET", `${path}?${new URLSearchParams(query)}`, { key });
  expect(answer.status, `${path} ${JSON.stringify(query)} ${answer.text}`).toBe(200);
  return answer.body as { readonly data: readonly Row[]; readonly nextCursor: string | null };
};

async function byPages(
  path: string,
  limit: string,
  query: Record<string, string>,
  key: string,
): Promise<Row[]> {
  const rows: Row[] = [];
  let cursor: string | null = null;
  do {
    const page: Awaited<ReturnType<typeof get>> = await get(
      path,
      { ...query, limit, ...(cursor !== null && { cursor }) },
      key,
    );
    rows.push(...page.data);
    cursor = page.nextCursor;
  } while (cursor !== null);
  return rows;
}

const idsOf = (rows: readonly Row[]) => rows.map(({ id }) => id);
const mayAsk = (list: List, role: (typeof ROLES)[number]) =>
  Object.entries<{ readonly roles: readonly string[] }>(SCOPES).some(
    ([name, { roles }]) => name === list.scope && roles.includes(role),
  );
const cases = LISTS.flatMap((list) =>
  ROLES.filter((role) => mayAsk(list, role)).map((role) => [list.id, role, list] as const),
);

test("every list of the description is among the cases", () => {
  expect(LISTS.length).toBeGreaterThan(15);
  expect(new Set(cases.map(([id]) => id)).size).toBe(LISTS.length);
});

describe("pages of one row each come to the same as one big page, and every filter filters", () => {
  test.each(cases)("%s for a %s", async (id, role, { path, filters }) => {
    const key = crowd[0]?.keys[role] ?? "";
    const { data: all } = await get(path, { limit: "200" }, key);
    expect(idsOf(await byPages(path, "1", {}, key))).toEqual(idsOf(all));
    for (const filter of filters) {
      if (OTHER_QUESTIONS[id]?.includes(filter)) continue;
      const values = new Set(all.map((row) => row[filter]).filter((value) => typeof value === "string"));
      for (const value of [...values, "none_0"].slice(0, 3).map(String)) {
        const answer = await shop.ask("GET", `${path}?${filter}=${value}&limit=200`, { key });
        // A filter with a list of accepted values refuses others.
        if (value === "none_0" && answer.status === 422) continue;
        const wanted = idsOf(all.filter((row) => row[filter] === value));
        expect(idsOf(answer.body.data), `${filter}=${value}`).toEqual(wanted);
        expect(idsOf(await byPages(path, "1", { [filter]: value }, key)), `${filter}=${value}`).toEqual(
          wanted,
        );
      }
    }
  });
});

describe("another person's records are not there for whoever is not in charge", () => {
  const ofPeople = LISTS.filter(({ filters, id }) => filters.includes("personId") && id !== "listKeys");

  test.each(
    ofPeople.flatMap((list) =>
      (["member", "student"] as const).map((role) => [list.id, role, list] as const),
    ),
  )("%s for a %s", async (_id, role, { path }) => {
    const [own, other] = crowd;
    const key = own?.keys[role] ?? "";
    const { data: seen } = await get(path, { limit: "200" }, key);
    const me = role === "member" ? own?.ids["personId"] : own?.ids["studentId"];
    for (const row of seen) expect(row["personId"]).toBe(me);
    const theirs = other?.ids["personId"] ?? "";
    expect((await get(path, { personId: theirs }, shop.managerKey)).data).not.toEqual([]);
    expect((await get(path, { personId: theirs }, key)).data).toEqual([]);
  });
});

test("a student sees the settings of their courses and nothing of the rack", async () => {
  const key = crowd[0]?.keys.student ?? "";
  const { data } = await get("/v1/approvals", { limit: "200" }, key);
  expect(idsOf(data)).toEqual([crowd[0]?.ids["approvalId"]]);
  expect(idsOf((await get("/v1/courses", {}, key)).data)).toEqual([crowd[0]?.ids["courseId"]]);
  for (const path of ["bits", "places", "routers", "plans", "inspections", "sharpenings", "speed-trials"]) {
    const answer = await shop.ask("GET", `/v1/${path}`, { key });
    expect([answer.status, answer.body.code], path).toEqual([403, "scope-missing"]);
  }
});

test("a member sees who has what if the shop's policy says so, and a student never", async () => {
  const [member, other] = [await addSomebody(shop, "member"), await addSomebody(shop, "member")];
  const loan = await made(shop, "/v1/loans", { bitId: (await addBit(shop)).id, personId: member.id });
  const student = await addSomebody(shop, "student");
  const say = (areLoansShown: boolean) =>
    shop.ask("PUT", "/v1/shop-policy", {
      body: { layer: {}, areLoansShown },
      headers: { "If-Match": "*" },
    });
  expect((await say(true)).body.areLoansShown).toBe(true);
  expect(idsOf((await get("/v1/loans", { personId: member.id }, other.key)).data)).toContain(loan.id);
  expect((await shop.ask("GET", `/v1/loans/${loan.id}`, { key: other.key })).status).toBe(200);
  const back = await shop.ask("POST", `/v1/loans/${loan.id}/return`, { body: {}, key: other.key });
  expect(back.status, "seeing is not taking").toBe(404);
  expect((await get("/v1/loans", {}, student.key)).data).toEqual([]);
  await say(false);
  expect((await shop.ask("GET", `/v1/loans/${loan.id}`, { key: other.key })).status).toBe(404);
});
