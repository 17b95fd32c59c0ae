import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addBit, addRouter, lastSequence, made, planFor } from "./crib.ts";
import { openShop, PANEL_BIT, type Shop } from "./shop.ts";

let shop: Shop;

beforeAll(async () => {
  shop = await openShop({}, () => new Date(), afterAll);
});

type Kept = { id: string };

/** Nothing marked on it: only what was learned can hold it back. */
const unmarkedBit = () => {
  const { markedMaxRpm: _, ...bit } = PANEL_BIT;
  return made(shop, "/v1/bits", { ...bit, massG: 250, runOutMm: 0.02 });
};
/** Read at every second mark, so that steps are fine. */
const readRouter = (given: object = {}) =>
  addRouter(shop, {
    minRpm: 6000,
    maxRpm: 22000,
    dial: { marks: { first: 1, last: 9 }, steps: 1 },
    ...given,
  });
const next = async (bit: Kept, router: Kept) =>
  (await shop.ask("GET", `/v1/bits/${bit.id}/speed-trials/next?routerId=${router.id}`)).body;
const enter = (bit: Kept, router: Kept, given: object) =>
  shop.ask("POST", "/v1/speed-trials", { body: { bitId: bit.id, routerId: router.id, ...given } });
const preview = async (bit: Kept, router: Kept) =>
  (await shop.ask("POST", "/v1/plans/preview", { body: planFor(bit, router) })).body;
const limitOf = (plan: { limits: { name: string; rpm: number }[] }, name: string) =>
  plan.limits.find((each) => each.name === name);

/** Climbs as the proposals say, running free each time, until there is nothing more to try or `stopAt` says it shook. */
async function climb(bit: Kept, router: Kept, shookFromRpm = Number.POSITIVE_INFINITY) {
  const tried: { mark: number; rpm: number }[] = [];
  for (let step = 1; step <= 50; step += 1) {
    const proposal = await next(bit, router);
    if (proposal.kind !== "try") return { tried, end: proposal };
    expect(proposal.step).toBe(step);
    expect(proposal.stepsAtMost).toBeGreaterThanOrEqual(step);
    expect(proposal.rpmHighest).toBeLessThanOrEqual(proposal.ceilingRpm);
    tried.push({ mark: proposal.mark, rpm: proposal.rpm });
    const outcome = proposal.rpm >= shookFromRpm ? "shook" : "ran-free";
    expect((await enter(bit, router, { mark: proposal.mark, outcome })).status).toBe(201);
  }
  return expect.unreachable("a climb ends");
}

describe("a guided trial", () => {
  test("climbs from the slowest mark to the ceiling, and what ran free is the plan's `tested` limit", async () => {
    const [bit, router] = [await unmarkedBit(), await readRouter()];
    const before = await preview(bit, router);
    expect(limitOf(before, "tested")).toBeUndefined();
    const { tried, end } = await climb(bit, router);
    expect(tried[0]).toEqual({ mark: 1, rpm: 6000 });
    for (const [index, { rpm }] of tried.entries()) expect(rpm).toBeGreaterThan(tried[index - 1]?.rpm ?? 0);
    expect(end).toMatchObject({ kind: "done", mark: null, rpm: null, howTo: [] });
    expect(end.reason).toMatch(/ceiling/);
    const after = await preview(bit, router);
    expect(limitOf(after, "tested")?.rpm).toBe(tried.at(-1)?.rpm);
    expect(end.fastestFreeRpm).toBe(tried.at(-1)?.rpm);
    expect(after.speed.rpm).toBe(before.speed.rpm);
  });

  test("ends at the speed at which it shook, and the plan stays at the fastest speed that ran free", async () => {
    const [bit, router] = [await unmarkedBit(), await readRouter()];
    const { tried, end } = await climb(bit, router, 10_000);
    const free = tried.at(-2);
    expect(end).toMatchObject({ kind: "done", fastestFreeRpm: free?.rpm });
    expect(end.reason).toMatch(/shook/);
    const plan = await preview(bit, router);
    expect(limitOf(plan, "tested")?.rpm).toBe(free?.rpm);
    expect(plan.speed).toMatchObject({ bindingLimit: "tested", ceilingRpm: free?.rpm });
    expect(plan.speed.rpm).toBeLessThanOrEqual(free?.rpm ?? 0);
  });

  test("keeps away in every other router from a speed at which the bit shook", async () => {
    const [bit, router, other] = [await unmarkedBit(), await readRouter(), await readRouter()];
    const { tried } = await climb(bit, router, 10_000);
    const shookRpm = tried.at(-1)?.rpm ?? 0;
    const elsewhere = await climb(bit, other);
    for (const { rpm } of elsewhere.tried) expect(rpm).toBeLessThan(shookRpm);
    expect(limitOf(await preview(bit, other), "tested")?.rpm).toBeLessThan(shookRpm);
  });

  test("no longer counts once it is set aside, with its reason kept", async () => {
    const [bit, router] = [await unmarkedBit(), await readRouter()];
    const { tried } = await climb(bit, router, 9000);
    const { body: list } = await shop.ask("GET", `/v1/speed-trials?bitId=${bit.id}&routerId=${router.id}`);
    expect(list.data.map(({ rpm }: { rpm: number }) => rpm)).toEqual(tried.map(({ rpm }) => rpm));
    const shook = list.data.at(-1);
    expect(shook.outcome).toBe("shook");
    const aside = await shop.ask("POST", `/v1/speed-trials/${shook.id}/set-aside`, {
      body: { reason: "A new bearing." },
    });
    expect(aside.body).toMatchObject({ version: 2, setAside: { reason: "A new bearing." } });
    expect(await next(bit, router)).toMatchObject({ kind: "try", mark: tried.at(-1)?.mark });
    for (const { id } of list.data) {
      await shop.ask("POST", `/v1/speed-trials/${id}/set-aside`, { body: { reason: "A new bearing." } });
    }
    expect(limitOf(await preview(bit, router), "tested")).toBeUndefined();
    expect(await next(bit, router)).toMatchObject({ kind: "try", step: 1, mark: 1 });
  });

  test("never goes over what is marked on the bit", async () => {
    const [bit, router] = [await addBit(shop, { markedMaxRpm: 11_000 }), await readRouter()];
    const { tried, end } = await climb(bit, router);
    // Where only the plate is known a speed may be a tenth off: the default policy.
    for (const { rpm } of tried) expect(rpm * 1.1).toBeLessThanOrEqual(11_000);
    expect(end.bindingLimit).toBe("marked-maximum");
  });

  test("is not possible if the router cannot run slowly enough, nor by hand with a bit for the table", async () => {
    const bit = await addBit(shop, { markedMaxRpm: 9000 });
    const fast = await readRouter({ minRpm: 10_000 });
    expect(await next(bit, fast)).toMatchObject({ kind: "not-possible", rpm: null, mark: null });
    const held = await readRouter({ mountings: ["handheld"] });
    const proposal = await next(await unmarkedBit(), held);
    expect(proposal).toMatchObject({ kind: "not-possible", rpm: null });
    expect(proposal.reason).toMatch(/table/);
  });
});

describe("a trial that is entered", () => {
  test("with a measured vibration goes by the measurement, unless somebody felt it shake", async () => {
    const [bit, router] = [await unmarkedBit(), await readRouter()];
    const outcomeOf = async (given: object) => (await enter(bit, router, { mark: 1, ...given })).body.outcome;
    // 1.8 mm/s is the default policy's most.
    expect(await outcomeOf({ vibrationMmPerS: 1.8 })).toBe("ran-free");
    expect(await outcomeOf({ vibrationMmPerS: 1.81 })).toBe("shook");
    expect(await outcomeOf({ vibrationMmPerS: 3, outcome: "ran-free" })).toBe("shook");
    expect(await outcomeOf({ vibrationMmPerS: 0.2, outcome: "shook" })).toBe("shook");
  });

  test("goes by what the shop has tightened", async () => {
    const own = await openShop();
    const [bit, router] = [await addBit(own), await addRouter(own)];
    const tightened = await own.ask("PUT", "/v1/shop-policy", {
      body: { layer: { vibrationFreeMaxMmPerS: 1 } },
      headers: { "If-Match": "*" },
    });
    expect(tightened.status).toBe(200);
    const { body } = await own.ask("POST", "/v1/speed-trials", {
      body: { bitId: bit.id, routerId: router.id, mark: 1, vibrationMmPerS: 1.2 },
    });
    expect(body.outcome).toBe("shook");
  });

  test("at a mark has the speed that the dial gave then; read slower since, the slower one counts", async () => {
    const [bit, router] = [await unmarkedBit(), await readRouter()];
    const { body } = await enter(bit, router, { mark: 3, outcome: "ran-free" });
    // 6000 to 22000 over eight steps.
    expect(body.rpm).toBe(10_000);
    const reading = { mark: 3, rpm: 9500, instrument: "Optical tachometer" };
    await made(shop, `/v1/routers/${router.id}/dial-readings`, reading);
    expect(limitOf(await preview(bit, router), "tested")?.rpm).toBe(9500);
    const faster = { ...reading, rpm: 10_900, isConfirmed: true };
    await made(shop, `/v1/routers/${router.id}/dial-readings`, faster);
    expect(limitOf(await preview(bit, router), "tested")?.rpm).toBe(10_000);
  });

  test.each([
    ["neither a mark nor a speed", { outcome: "ran-free" }, "/rpm"],
    ["both", { mark: 1, rpm: 6000, outcome: "ran-free" }, "/rpm"],
    ["a mark that the dial has not", { mark: 2.5, outcome: "ran-free" }, "/mark"],
    ["a letter on a dial of numbers", { mark: "B", outcome: "ran-free" }, "/mark"],
    ["no outcome", { mark: 1 }, "/outcome"],
    ["less than no vibration", { mark: 1, vibrationMmPerS: -1 }, "/vibrationMmPerS"],
    ["a router nobody knows", { routerId: "router_0", mark: 1, outcome: "shook" }, "/routerId"],
    ["a day still to come", { mark: 1, outcome: "shook", triedAt: "2999-01-01T00:00:00Z" }, "/triedAt"],
  ])("with %s is refused and changes nothing", async (_name, given, pointer) => {
    const [bit, router] = [await unmarkedBit(), await readRouter()];
    const before = await lastSequence(shop);
    const answer = await enter(bit, router, given);
    expect(answer.status).toBe(422);
    expect(answer.body.errors).toMatchObject([{ pointer }]);
    expect(await lastSequence(shop)).toBe(before);
  });
});
