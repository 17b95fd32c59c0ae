import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { addBit, addRouter, addSomebody, lastSequence, made, type Somebody } from "./crib.ts";
import { openShop, type Shop } from "./shop.ts";

const START = Date.parse("2026-03-02T08:00:00.000Z");
const DAY_MS = 24 * 60 * 60 * 1000;
let nowMs = START;
let shop: Shop;
let router: { id: string };
let member: Somebody;

beforeAll(async () => {
  shop = await openShop({}, () => new Date(nowMs), afterAll);
  router = await addRouter(shop);
  await made(shop, "/v1/collets", {
    name: "1/2 in",
    routerId: router.id,
    diameterMm: 12.7,
    condition: "good",
  });
});
beforeEach(async () => {
  nowMs = START;
  member = await addSomebody(shop, "member");
  nowMs = START + 40 * DAY_MS;
});

/** A bit that has been here for longer than a member may look back. */
async function oldBit() {
  nowMs = START;
  const bit = await addBit(shop);
  nowMs = START + 40 * DAY_MS;
  return bit;
}
const at = (days: number) => new Date(nowMs + days * DAY_MS).toISOString();
const log = (bit: { id: string }, given: object = {}, key: string = member.key) =>
  shop.ask("POST", "/v1/uses", {
    body: {
      ...{ bitId: bit.id, routerId: router.id, woodId: "black-cherry" },
      ...{ metres: 4, minutes: 3, outcomes: ["fine"] },
      ...given,
    },
    key,
  });
const lend = (bit: { id: string }, given: object = {}) =>
  shop.ask("POST", "/v1/loans", { body: { bitId: bit.id, personId: member.id, ...given } });
const hold = (bit: { id: string }, key = member.key) =>
  shop.ask("POST", `/v1/bits/${bit.id}/hold`, { body: { reason: "It fell on the floor." }, key });
const pointersOf = ({ errors }: { errors: { pointer: string }[] }) => errors.map(({ pointer }) => pointer);

async function refused(bit: { id: string }, given: object, pointer: string) {
  const before = await lastSequence(shop);
  const answer = await log(bit, given);
  expect(answer.status, answer.text).toBe(422);
  expect(pointersOf(answer.body)).toEqual([pointer]);
  expect(await lastSequence(shop)).toBe(before);
}

describe("a member's use", () => {
  test("without a loan, dated 1970, that holds a bit is refused, with a reason too", async () => {
    const bit = await oldBit();
    const attack = { outcomes: ["came-loose"], doneAt: "1970-01-01T00:00:00Z" };
    await refused(bit, attack, "/doneAt");
    await refused(bit, { ...attack, withoutLoanReason: "It lay on the bench." }, "/doneAt");
    expect((await shop.ask("GET", `/v1/bits/${bit.id}`)).body.state).toBe("in-rack");
  });

  test("needs the bit on loan to them, now or then, or a reason", async () => {
    const bit = await oldBit();
    await refused(bit, {}, "/withoutLoanReason");
    const { body: loan } = await lend(bit);
    expect((await log(bit)).status).toBe(201);
    nowMs += DAY_MS;
    await made(shop, `/v1/loans/${loan.id}/return`, {});
    nowMs += DAY_MS;
    await refused(bit, {}, "/withoutLoanReason");
    await refused(bit, { doneAt: at(-2.5) }, "/withoutLoanReason");
    expect((await log(bit, { doneAt: at(-1.5) })).status).toBe(201);
    const { status, body } = await log(bit, { withoutLoanReason: "It was in the table already." });
    expect([status, body.withoutLoanReason]).toEqual([201, "It was in the table already."]);
  });

  test("is not older than the policy says; somebody in charge may log what is", async () => {
    const bit = await oldBit();
    const with_ = { withoutLoanReason: "Before loans were kept." };
    await refused(bit, { ...with_, doneAt: at(-28.01) }, "/doneAt");
    expect((await log(bit, { ...with_, doneAt: at(-28) })).status).toBe(201);
    expect((await log(bit, { doneAt: at(-39) }, shop.managerKey)).status).toBe(201);
  });

  test("is not from before the bit was here; somebody in charge may enter old notes", async () => {
    const bit = await addBit(shop);
    await lend(bit);
    await refused(bit, { doneAt: at(-1) }, "/doneAt");
    expect((await log(bit, { doneAt: at(-1) }, shop.managerKey)).status).toBe(201);
  });

  test("cuts no faster than wood is fed by hand", async () => {
    const bit = await oldBit();
    await lend(bit);
    await refused(bit, { metres: 12.1, minutes: 1 }, "/metres");
    await refused(bit, { metres: 100_000, minutes: 3 }, "/metres");
    await refused(bit, { metres: 1, minutes: 0 }, "/metres");
    await refused(bit, { metres: 1, minutes: 1441 }, "/minutes");
    expect((await log(bit, { metres: 12, minutes: 1 })).status).toBe(201);
  });
});

describe("what one member takes out of use in a day", () => {
  /** One after the other, in whose order they are listed. */
  async function bits(count: number) {
    const made = [];
    for (let index = 0; index < count; index += 1) made.push(await oldBit());
    return made;
  }

  test("is limited, and shown to whoever is in charge at once with who and why", async () => {
    const rack = await bits(7);
    const statuses = [];
    for (const bit of rack.slice(0, 3)) statuses.push((await hold(bit)).status);
    for (const bit of rack.slice(3)) {
      const given = { outcomes: ["came-loose"], withoutLoanReason: "It was in the table." };
      statuses.push((await log(bit, given)).status);
    }
    expect(statuses).toEqual([200, 200, 200, 201, 201, 409, 409]);
    const { body } = await hold(rack[6] ?? { id: "" });
    expect(body.code).toBe("holds-used-up");
    const list = await shop.ask("GET", "/v1/stock/held?limit=200");
    const own = list.body.data.filter(({ by }: { by: string }) => by === member.id);
    expect(own).toHaveLength(5);
    expect(own[0]).toMatchObject({
      ...{ name: "A member", isByStaff: false, reason: "It fell on the floor.", since: at(0) },
    });
    expect((await shop.ask("GET", "/v1/stock/held", { key: member.key })).status).toBe(403);
    expect((await hold(rack[6] ?? { id: "" }, shop.managerKey)).status).toBe(200);
  });

  test("is limited when all is asked for at the same moment, too", async () => {
    const rack = await bits(12);
    const answers = await Promise.all(rack.map((bit) => hold(bit)));
    expect(answers.filter(({ status }) => status === 200)).toHaveLength(5);
    expect(new Set(answers.map(({ status }) => status))).toEqual(new Set([200, 409]));
  });

  test("goes on the next day, and as soon as one was inspected and released", async () => {
    const rack = await bits(8);
    for (const bit of rack.slice(0, 5)) expect((await hold(bit)).status).toBe(200);
    const [first, , , , , sixth, seventh] = rack;
    if (!first || !sixth || !seventh) throw new Error("eight bits");
    expect((await hold(sixth)).status).toBe(409);
    await made(shop, `/v1/bits/${first.id}/inspections`, { findings: [], effect: "note" });
    await made(shop, `/v1/bits/${first.id}/release`, { reason: "Nothing found." });
    expect((await hold(sixth)).status).toBe(200);
    expect((await hold(seventh)).status).toBe(409);
    nowMs += DAY_MS;
    expect((await hold(seventh)).status).toBe(200);
  });

  test("is what the shop's policy says", async () => {
    const [one, two] = await bits(2);
    if (!one || !two) throw new Error("two bits");
    const policy = await shop.ask("PUT", "/v1/shop-policy", {
      body: { layer: { holdsPerDayMax: 1 } },
      headers: { "If-Match": "*" },
    });
    expect(policy.status, policy.text).toBe(200);
    expect((await hold(one)).status).toBe(200);
    expect((await hold(two)).status).toBe(409);
    await shop.ask("PUT", "/v1/shop-policy", { body: { layer: {} }, headers: { "If-Match": "*" } });
  });
});

test("a loan has a longest term", async () => {
  const bit = await oldBit();
  const long = await lend(bit, { dueAt: at(90.01) });
  expect([long.status, pointersOf(long.body)]).toEqual([422, ["/dueAt"]]);
  expect((await lend(bit, { dueAt: at(90) })).status).toBe(201);
});
