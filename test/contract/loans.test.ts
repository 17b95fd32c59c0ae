import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { addBit, addPlace, addRouter, addSomebody, lastSequence, made, type Somebody } from "./crib.ts";
import { openShop, type Shop } from "./shop.ts";

const START = "2026-03-02T08:00:00.000Z";
let now = new Date(START);
let shop: Shop;
let member: Somebody;
let other: Somebody;

beforeAll(async () => {
  shop = await openShop({}, () => now, afterAll);
  member = await addSomebody(shop, "member");
  other = await addSomebody(shop, "member");
});
beforeEach(() => {
  now = new Date(START);
});

const read = async (url: string, key?: string) => {
  const { body } = await shop.ask("GET", url, key === undefined ? {} : { key });
  return body;
};
const idsOf = async (url: string, key?: string): Promise<string[]> =>
  (await read(url, key)).data.map(({ id }: { id: string }) => id);
const lend = (bitId: string, given: object = {}, key: string = member.key) =>
  shop.ask("POST", "/v1/loans", { body: { bitId, ...given }, key });
const giveBack = (loanId: string, body: object = {}, key: string = member.key) =>
  shop.ask("POST", `/v1/loans/${loanId}/return`, { body, key });

describe("a bit taken out", () => {
  test("is with who took it, for a router and a job, until it is back where it belongs", async () => {
    const place = await addPlace(shop, "Rack");
    const bit = await addBit(shop, { homePlaceId: place.id });
    const router = await addRouter(shop);
    const { status, body: loan, headers } = await lend(bit.id, { routerId: router.id, job: "Kitchen doors" });
    expect(status).toBe(201);
    expect(loan).toMatchObject({
      bitId: bit.id,
      personId: member.id,
      routerId: router.id,
      job: "Kitchen doors",
      dueAt: "2026-03-03T08:00:00.000Z",
    });
    const out = await read(`/v1/bits/${bit.id}`);
    expect(out).toMatchObject({ state: "on-loan", loanId: loan.id });
    expect(out.placeId).toBeUndefined();
    const back = await giveBack(loan.id);
    expect(back.body).toMatchObject({ returnedAt: START, returnedPlaceId: place.id, version: 2 });
    expect((await read(String(headers["location"]))).returnedAt).toBe(START);
    const home = await read(`/v1/bits/${bit.id}`);
    expect(home).toMatchObject({ state: "in-rack", placeId: place.id });
    expect(home.loanId).toBeUndefined();
  });

  test("may come back to another place than its own", async () => {
    const bit = await addBit(shop, { homePlaceId: (await addPlace(shop, "Rack")).id });
    const bench = await addPlace(shop, "Bench");
    const { body: loan } = await lend(bit.id);
    expect((await giveBack(loan.id, { placeId: "place_0" })).status).toBe(422);
    expect((await giveBack(loan.id, { placeId: bench.id })).status).toBe(200);
    expect((await read(`/v1/bits/${bit.id}`)).placeId).toBe(bench.id);
    expect((await read(`/v1/places/${bench.id}/contents`)).misplaced).toEqual([bit.id]);
  });

  test("comes back once", async () => {
    const { body: loan } = await lend((await addBit(shop)).id);
    const answers = await Promise.all([giveBack(loan.id), giveBack(loan.id), giveBack(loan.id)]);
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409, 409]);
    expect((await giveBack(loan.id)).body.code).toBe("loan-ended");
  });

  test("is got by exactly one of twenty who ask at the same moment", async () => {
    const bit = await addBit(shop);
    const before = await lastSequence(shop);
    const answers = await Promise.all(Array.from({ length: 20 }, () => lend(bit.id)));
    const statuses = answers.map(({ status }) => status);
    expect(statuses.filter((status) => status === 201)).toHaveLength(1);
    expect(statuses.filter((status) => status === 409)).toHaveLength(19);
    expect(await lastSequence(shop)).toBe(before + 2);
    expect(await idsOf(`/v1/loans?bitId=${bit.id}`)).toHaveLength(1);
  });

  test("can be neither removed, sent to sharpening nor taken again until it is back", async () => {
    const bit = await addBit(shop);
    const { body: loan } = await lend(bit.id);
    const url = `/v1/bits/${bit.id}`;
    const refusals = [
      await shop.ask("DELETE", url, { headers: { "If-Match": "*" } }),
      await shop.ask("POST", `${url}/send-to-sharpening`),
      await lend(bit.id, {}, other.key),
    ];
    expect(refusals.map(({ status, body }) => [status, body.code])).toEqual([
      [409, "bit-on-loan"],
      [409, "bit-on-loan"],
      [409, "bit-not-available"],
    ]);
    await giveBack(loan.id);
    expect((await shop.ask("DELETE", url, { headers: { "If-Match": "*" } })).status).toBe(204);
    expect((await read(`/v1/loans/${loan.id}`)).bitId).toBe(bit.id);
  });

  test("that is held while it is out stays held when it is back", async () => {
    const bit = await addBit(shop);
    const { body: loan } = await lend(bit.id);
    await shop.ask("POST", `/v1/bits/${bit.id}/hold`, { body: { reason: "Somebody heard it whistle." } });
    await giveBack(loan.id);
    expect((await read(`/v1/bits/${bit.id}`)).state).toBe("held");
    expect((await lend(bit.id)).body.code).toBe("bit-not-usable");
  });

  test("cannot be had while it is at sharpening, and not by who has left", async () => {
    const bit = await addBit(shop);
    await shop.ask("POST", `/v1/bits/${bit.id}/send-to-sharpening`);
    expect((await lend(bit.id)).body.code).toBe("bit-not-available");
    const gone = await addSomebody(shop, "member");
    await shop.ask("PATCH", `/v1/people/${gone.id}`, {
      body: { state: "left" },
      headers: { "If-Match": "*" },
    });
    const answer = await lend((await addBit(shop)).id, { personId: gone.id }, shop.managerKey);
    expect([answer.status, answer.body.code]).toEqual([409, "person-left"]);
  });

  test.each([
    ["/dueAt", { dueAt: "2026-03-02T08:00:00Z" }],
    ["/dueAt", { dueAt: "2026-06-30T23:59:60Z" }],
    ["/dueAt", { dueAt: "tomorrow" }],
    ["/routerId", { routerId: "router_0" }],
    ["/bitId", { bitId: "bit_0" }],
  ])("is not lent with a wrong %s: %j", async (pointer, given) => {
    const bit = await addBit(shop);
    const answer = await lend(bit.id, given);
    expect(answer.status).toBe(422);
    expect(answer.body.errors).toMatchObject([{ pointer }]);
    expect((await read(`/v1/bits/${bit.id}`)).state).toBe("in-rack");
  });
});

describe("what is overdue", () => {
  test("is what is out after its time, by the shop's clock", async () => {
    const [soon, late] = [await addBit(shop), await addBit(shop)];
    const { body: first } = await lend(soon.id, { dueAt: "2026-03-02T09:00:00Z" });
    const { body: second } = await lend(late.id, { dueAt: "2026-03-02T13:00:00+03:00" });
    const overdue = () => idsOf("/v1/loans?state=overdue&limit=200", member.key);
    now = new Date("2026-03-02T09:00:00.000Z");
    expect(await overdue()).toEqual([]);
    now = new Date("2026-03-02T09:00:00.001Z");
    expect(await overdue()).toEqual([first.id]);
    now = new Date("2026-03-02T10:00:00.001Z");
    expect(await overdue()).toEqual([first.id, second.id]);
    expect(await idsOf(`/v1/loans?state=overdue&bitId=${late.id}`)).toEqual([second.id]);
    await giveBack(first.id);
    expect(await overdue()).toEqual([second.id]);
    expect(await idsOf("/v1/loans?state=out&limit=200", member.key)).toContain(second.id);
    expect(await idsOf("/v1/loans?state=out&limit=200", member.key)).not.toContain(first.id);
    await giveBack(second.id);
  });

  test("comes by pages without a gap or a repetition", async () => {
    const borrower = await addSomebody(shop, "member");
    const lent: string[] = [];
    for (let count = 0; count < 5; count += 1) {
      lent.push((await lend((await addBit(shop)).id, {}, borrower.key)).body.id);
    }
    now = new Date("2026-03-10T00:00:00Z");
    const seen: string[] = [];
    let cursor = "";
    do {
      const page = await read(`/v1/loans?state=overdue&limit=2&personId=${borrower.id}${cursor}`);
      seen.push(...page.data.map(({ id }: { id: string }) => id));
      cursor = page.nextCursor === null ? "" : `&cursor=${page.nextCursor}`;
    } while (cursor !== "");
    expect(seen).toEqual(lent);
  });

  test("a clock that jumps back neither loses a loan nor stops its return", async () => {
    const bit = await addBit(shop);
    const { body: loan } = await lend(bit.id);
    now = new Date("2025-01-01T00:00:00Z");
    expect(await idsOf(`/v1/loans?state=out&bitId=${bit.id}`)).toEqual([loan.id]);
    expect(await idsOf(`/v1/loans?state=overdue&bitId=${bit.id}`)).toEqual([]);
    expect((await giveBack(loan.id)).body.returnedAt).toBe("2025-01-01T00:00:00.000Z");
    const again = await lend(bit.id);
    expect(again.status).toBe(201);
    expect(await idsOf(`/v1/loans?bitId=${bit.id}`)).toEqual([loan.id, again.body.id]);
  });
});

describe("a member", () => {
  test("borrows in their own name only", async () => {
    const bit = await addBit(shop);
    const answer = await lend(bit.id, { personId: other.id });
    expect([answer.status, answer.body.code]).toEqual([403, "not-yours"]);
    expect((await lend(bit.id, { personId: member.id })).body.personId).toBe(member.id);
  });

  test("sees and returns their own loans; others' are not there for them", async () => {
    const { body: loan } = await lend((await addBit(shop)).id);
    const theirs = await shop.ask("GET", `/v1/loans/${loan.id}`, { key: other.key });
    const unreal = await shop.ask("GET", "/v1/loans/loan_0", { key: other.key });
    expect([theirs.status, unreal.status]).toEqual([404, 404]);
    expect(theirs.body.detail.replace(loan.id, "loan_0")).toBe(unreal.body.detail);
    expect((await giveBack(loan.id, {}, other.key)).status).toBe(404);
    expect(await idsOf("/v1/loans?limit=200", other.key)).not.toContain(loan.id);
    expect(await idsOf(`/v1/loans?personId=${member.id}`, other.key)).toEqual([]);
    expect(await idsOf("/v1/loans?limit=200", member.key)).toContain(loan.id);
    expect((await giveBack(loan.id)).status).toBe(200);
  });

  test("needs a key of their own: a program's in the role of a member borrows for nobody", async () => {
    const { key } = await made(shop, "/v1/keys", { name: "Screen", role: "member" });
    const bit = await addBit(shop);
    for (const answer of [
      await lend(bit.id, {}, key),
      await lend(bit.id, { personId: member.id }, key),
      await shop.ask("GET", "/v1/loans", { key }),
    ]) {
      expect([answer.status, answer.body.code]).toEqual([403, "person-needed"]);
    }
  });
});

test("staff lend and take back for anybody, in their own name if they name nobody", async () => {
  const instructor = await addSomebody(shop, "instructor");
  const [bit, own] = [await addBit(shop), await addBit(shop)];
  const { body: loan } = await lend(bit.id, { personId: member.id }, instructor.key);
  expect(loan.personId).toBe(member.id);
  expect(loan.lentBy, "by whom, beside for whom").toBe(instructor.id);
  expect((await lend(own.id, {}, instructor.key)).body.personId).toBe(instructor.id);
  const back = await giveBack(loan.id, {}, instructor.key);
  expect(back.body).toMatchObject({ personId: member.id, returnedBy: instructor.id });
  const nobody = await lend(bit.id, {}, shop.managerKey);
  expect(nobody.status).toBe(422);
  expect(nobody.body.errors).toMatchObject([{ pointer: "/personId" }]);
});
