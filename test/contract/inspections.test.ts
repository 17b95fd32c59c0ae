import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { addBit, addRouter, addSomebody, lastSequence, made, planFor } from "./crib.ts";
import { openShop, type Shop } from "./shop.ts";

const START = "2026-03-02T08:00:00.000Z";
let now = new Date(START);
let shop: Shop;
let router: { id: string };

beforeAll(async () => {
  shop = await openShop({}, () => now, afterAll);
  router = await addRouter(shop);
});
beforeEach(() => {
  now = new Date(START);
});

type Bit = { id: string };

const read = async (bit: Bit) => (await shop.ask("GET", `/v1/bits/${bit.id}`)).body;
const inspect = (bit: Bit, body: object) => shop.ask("POST", `/v1/bits/${bit.id}/inspections`, { body });
const act = (bit: Bit, what: string, reason = "Looked at by the bench lead.") =>
  shop.ask("POST", `/v1/bits/${bit.id}/${what}`, { body: { reason } });
const preview = (bit: Bit) => shop.ask("POST", "/v1/plans/preview", { body: planFor(bit, router) });
const use = (bit: Bit, given: object) =>
  made(shop, "/v1/uses", {
    bitId: bit.id,
    routerId: router.id,
    woodId: "black-cherry",
    metres: 100,
    minutes: 10,
    outcomes: ["fine"],
    ...given,
  });

describe("an inspection", () => {
  test("that is only a note leaves the bit in use, and starts to count days and metres again", async () => {
    const bit = await addBit(shop);
    await use(bit, { metres: 120 });
    now = new Date("2026-03-05T08:00:00Z");
    const { id: personId, key } = await addSomebody(shop, "instructor");
    const { status, body } = await shop.ask("POST", `/v1/bits/${bit.id}/inspections`, {
      body: { findings: ["pitch-build-up"], effect: "note", notes: "Cleaned." },
      key,
    });
    expect(status).toBe(201);
    expect(body).toMatchObject({ bitId: bit.id, personId, inspectedAt: "2026-03-05T08:00:00.000Z" });
    const after = await read(bit);
    expect(after).toMatchObject({ state: "in-rack", inspectedAt: "2026-03-05T08:00:00.000Z" });
    expect(after.used).toMatchObject({ metres: 120, metresSinceInspection: 0 });
    // Half a year, the policy's longest, from the day it was looked at.
    expect(after.inspectionDueAt).toBe("2026-09-01T08:00:00.000Z");
  });

  test("that is entered late has not seen what was cut since, nor what a later one found", async () => {
    const bit = await addBit(shop);
    now = new Date("2026-03-03T08:00:00Z");
    await use(bit, { metres: 70 });
    now = new Date("2026-03-05T08:00:00Z");
    await use(bit, { metres: 50 });
    await inspect(bit, { findings: [], effect: "note", inspectedAt: "2026-03-04T08:00:00Z" });
    expect((await read(bit)).used.metresSinceInspection).toBe(50);
    await inspect(bit, { findings: [], effect: "note", inspectedAt: "2026-03-01T08:00:00Z" });
    expect(await read(bit)).toMatchObject({
      inspectedAt: "2026-03-04T08:00:00.000Z",
      used: { metresSinceInspection: 50 },
    });
  });

  test.each(["cracked-braze", "bent"])("that found %s cannot be a note", async (finding) => {
    const bit = await addBit(shop);
    const before = await lastSequence(shop);
    const answer = await inspect(bit, { findings: ["pitch-build-up", finding], effect: "note" });
    expect(answer.status).toBe(422);
    expect(answer.body.errors).toMatchObject([{ pointer: "/effect", accepted: "hold or retire" }]);
    expect(await lastSequence(shop)).toBe(before);
    expect((await inspect(bit, { findings: [finding], effect: "hold" })).status).toBe(201);
    expect(await read(bit)).toMatchObject({
      state: "held",
      hold: { reason: `Found: ${finding}.`, cause: "inspection" },
    });
  });

  test.each([
    ["/findings/0", { findings: ["dragon"], effect: "note" }],
    ["/findings", { findings: ["bent", "bent"], effect: "hold" }],
    ["/effect", { findings: [], effect: "pray" }],
    ["/inspectedAt", { findings: [], effect: "note", inspectedAt: "2026-03-02T08:05:01Z" }],
    ["/inspectedAt", { findings: [], effect: "note", inspectedAt: "2026-01-01T00:00:00+01" }],
  ])("is refused with a wrong %s: %j", async (pointer, body) => {
    const answer = await inspect(await addBit(shop), body);
    expect(answer.status).toBe(422);
    expect(answer.body.errors.map((each: { pointer: string }) => each.pointer)).toEqual([pointer]);
  });

  test("of a retired bit is refused, and so is one of no bit", async () => {
    const bit = await addBit(shop);
    await inspect(bit, { findings: ["cracked-braze"], effect: "retire" });
    expect((await inspect(bit, { findings: [], effect: "note" })).body.code).toBe("bit-not-usable");
    expect((await inspect({ id: "bit_0" }, { findings: [], effect: "note" })).status).toBe(404);
  });
});

describe("a bit that is held or retired", () => {
  test.each([
    ["held", (bit: Bit) => act(bit, "hold")],
    ["held by an inspection", (bit: Bit) => inspect(bit, { findings: ["scored-shank"], effect: "hold" })],
    ["retired", (bit: Bit) => act(bit, "retire")],
  ])("%s gets no plan, no trial, no loan and no number anywhere", async (_name, end) => {
    const bit = await addBit(shop);
    expect((await preview(bit)).status).toBe(200);
    await end(bit);
    const { id: personId } = await addSomebody(shop, "member");
    const refusals = [
      await preview(bit),
      await shop.ask("POST", "/v1/plans", { body: planFor(bit, router) }),
      await shop.ask("POST", "/v1/speed-trials", {
        body: { bitId: bit.id, routerId: router.id, mark: 1, outcome: "ran-free" },
      }),
      await shop.ask("POST", "/v1/loans", { body: { bitId: bit.id, personId } }),
      await shop.ask("POST", "/v1/panels/size", {
        body: {
          ...{ woodId: "black-cherry", bit: { id: bit.id }, router: { id: router.id }, mounting: "table" },
          ...{
            openings: [{ widthMm: 300, heightMm: 500 }],
            groove: { depthMm: 10, widthMm: 6.35 },
            thicknessMm: 19,
          },
          moisture: { percent: 8, tolerancePercent: 1 },
          climate: {
            driest: { relativeHumidityPercent: 30, temperatureC: 21 },
            wettest: { relativeHumidityPercent: 60, temperatureC: 21 },
          },
        },
      }),
    ];
    for (const { status, body, text } of refusals) {
      expect([status, body.code], text).toEqual([409, "bit-not-usable"]);
      expect(text).not.toMatch(/rpm/i);
    }
    const { body: next } = await shop.ask(
      "GET",
      `/v1/bits/${bit.id}/speed-trials/next?routerId=${router.id}`,
    );
    expect(next).toMatchObject({
      kind: "not-possible",
      mark: null,
      rpm: null,
      ceilingRpm: null,
      howTo: [],
    });
    expect(next.reason).toMatch(/out of use/);
    const sound = await addBit(shop);
    const { body: batch } = await shop.ask("POST", "/v1/plans/preview-batch", {
      body: { requests: [planFor(bit, router), planFor(sound, router)] },
    });
    expect(batch.results[0].problem.code).toBe("bit-not-usable");
    expect(batch.results[1].plan.verdict).toBe("run-with-care");
    const { body: table } = await shop.ask("POST", "/v1/plans/shop-table", {
      body: {
        ...{ bitIds: [bit.id, sound.id], routerIds: [router.id], woodIds: ["black-cherry"] },
        mounting: "table",
      },
    });
    expect(table.rows[0]).toMatchObject({
      verdict: "do-not-run",
      rpm: null,
      mark: null,
      ceilingRpm: null,
    });
    expect(table.rows[0].reason).not.toBe("");
    expect(table.rows[1].rpm).toBeGreaterThan(0);
  });

  test("is planned again once it is released, unless it is retired", async () => {
    const bit = await addBit(shop);
    expect((await act(bit, "release")).body.code).toBe("invalid-state");
    await inspect(bit, { findings: ["heat-discolouration"], effect: "hold" });
    await inspect(bit, { findings: [], effect: "note" });
    expect((await preview(bit)).status).toBe(409);
    expect((await act(bit, "release")).body.state).toBe("in-rack");
    expect((await preview(bit)).status).toBe(200);
    await act(bit, "retire");
    expect((await act(bit, "release")).body.code).toBe("bit-not-usable");
    expect((await act(bit, "hold")).body.code).toBe("bit-not-usable");
  });

  test("is retired for good, with whether another has taken its place", async () => {
    const bit = await addBit(shop);
    await act(bit, "retire", "A tooth is gone.");
    now = new Date("2026-03-09T08:00:00Z");
    const { body } = await shop.ask("POST", `/v1/bits/${bit.id}/retire`, {
      body: { reason: "A new one hangs there.", isReplaced: true },
    });
    expect(body.retirement).toEqual({ at: START, reason: "A new one hangs there.", isReplaced: true });
  });

  test.each(["hold", "release", "retire"])("needs a reason: %s without one is refused", async (what) => {
    const bit = await addBit(shop);
    for (const reason of [undefined, "", "   ", "no", "x".repeat(301)]) {
      const answer = await shop.ask("POST", `/v1/bits/${bit.id}/${what}`, { body: { reason } });
      expect(answer.status).toBe(422);
      expect(answer.body.errors[0].pointer).toBe("/reason");
    }
  });
});

describe("an inspection is due", () => {
  const isDue = async (bit: Bit) => {
    const { body } = await shop.ask("GET", "/v1/stock/due?limit=200");
    return body.data.find((each: { bit: Bit }) => each.bit.id === bit.id);
  };

  test("after its days, to the moment", async () => {
    const bit = await addBit(shop, { inspectionIntervalDays: 30 });
    now = new Date("2026-04-01T07:59:59.999Z");
    expect(await isDue(bit)).toBeUndefined();
    now = new Date("2026-04-01T08:00:00.000Z");
    expect(await isDue(bit)).toMatchObject({ dueAt: "2026-04-01T08:00:00.000Z" });
    expect((await isDue(bit)).reason).toMatch(/days/);
    await inspect(bit, { findings: [], effect: "note" });
    expect(await isDue(bit)).toBeUndefined();
  });

  test("from when it has cut its metres, whatever else happens to it", async () => {
    const bit = await addBit(shop, { inspectionIntervalM: 150 });
    await use(bit, { metres: 149.9 });
    expect(await isDue(bit)).toBeUndefined();
    now = new Date("2026-03-03T08:00:00Z");
    await use(bit, { metres: 0.1 });
    now = new Date("2026-03-04T08:00:00Z");
    await use(bit, { metres: 5 });
    await shop.ask("PATCH", `/v1/bits/${bit.id}`, { body: { notes: "x" }, headers: { "If-Match": "*" } });
    expect(await isDue(bit)).toMatchObject({ dueAt: "2026-03-03T08:00:00.000Z" });
    expect((await isDue(bit)).reason).toMatch(/155 m/);
  });

  test("never for a bit that is retired", async () => {
    const bit = await addBit(shop, { inspectionIntervalDays: 1 });
    await act(bit, "retire");
    now = new Date("2027-01-01T00:00:00Z");
    expect(await isDue(bit)).toBeUndefined();
  });
});
