import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addBit, addRouter, addSomebody, made, STRAIGHT_BIT } from "./crib.ts";
import { openShop, type Shop } from "./shop.ts";

type Bit = { id: string; name: string };

let now = new Date("2026-03-02T08:00:00Z");
let shop: Shop;
let router: { id: string };
let small: Bit;
let panel: Bit;
let worn: Bit;
let retired: Bit;
let held: Bit;

/** Five bits: a small straight one, a heavy panel bit, one with no sharpening left, one retired, one held. */
beforeAll(async () => {
  shop = await openShop({}, () => now, afterAll);
  router = await addRouter(shop);
  small = await addBit(shop, { ...STRAIGHT_BIT, name: "Small", massG: 60, markedMaxRpm: 24_000 });
  panel = await addBit(shop, { name: "Panel" });
  const { massG: _, markedMaxRpm: __, ...bare } = { ...STRAIGHT_BIT, massG: 1, markedMaxRpm: 1 };
  worn = await made(shop, "/v1/bits", { ...bare, name: "Worn", smallestUsableDiameterMm: 12.6 });
  retired = await addBit(shop, { name: "Retired" });
  held = await addBit(shop, { name: "Held" });
  await shop.ask("POST", `/v1/bits/${retired.id}/retire`, { body: { reason: "A tooth is gone." } });
  await shop.ask("POST", `/v1/bits/${held.id}/hold`, { body: { reason: "It may be bent." } });
  const use = (bit: Bit, minutes: number) =>
    made(shop, "/v1/uses", {
      ...{ bitId: bit.id, routerId: router.id, woodId: "black-cherry" },
      ...{ metres: minutes * 2, minutes, outcomes: ["fine"] },
    });
  await use(small, 5);
  await use(panel, 3);
  await use(worn, 4);
  await use(panel, 6);
  await use(retired, 4);
});

const asked = async (url: string, key?: string) => (await shop.ask("GET", url, key ? { key } : {})).body.data;
const names = async (url: string) => (await asked(url)).map(({ name }: Bit) => name);
const namesIn = async (url: string) => (await asked(url)).map(({ bit }: { bit: Bit }) => bit.name);

describe("one request answers", () => {
  test("which bits fit this router", async () => {
    const slow = await addRouter(shop, {
      minRpm: 8000,
      maxRpm: 8000,
      dial: undefined,
      colletDiametersMm: [12.7],
    });
    expect(await names(`/v1/bits?fitsRouterId=${slow.id}`)).toEqual([
      "Small",
      "Panel",
      "Worn",
      "Retired",
      "Held",
    ]);
    const fast = await addRouter(shop, { minRpm: 20_000, maxRpm: 20_000, dial: undefined });
    expect(await names(`/v1/bits?fitsRouterId=${fast.id}&state=in-rack`)).toEqual(["Small", "Worn"]);
    const other = await addRouter(shop, { colletDiametersMm: [6.35, 8] });
    expect(await names(`/v1/bits?fitsRouterId=${other.id}`)).toEqual([]);
    const answer = await shop.ask("GET", "/v1/bits?fitsRouterId=router_0");
    expect(answer.body.errors).toMatchObject([{ in: "query", pointer: "/fitsRouterId" }]);
  });

  test("which may be used handheld", async () => {
    expect(await names("/v1/bits?clearance=handheld")).toEqual(["Small", "Worn"]);
    expect(await names("/v1/bits?clearance=table-only&state=in-rack")).toEqual(["Panel"]);
  });

  test("which have no mass weighed, or no marking recorded", async () => {
    expect(await names("/v1/bits?mass=missing")).toEqual(["Worn"]);
    expect(await names("/v1/bits?marking=missing")).toEqual(["Worn"]);
    await shop.ask("PATCH", `/v1/bits/${worn.id}`, { body: { massG: 70 }, headers: { "If-Match": "*" } });
    expect(await names("/v1/bits?mass=missing")).toEqual([]);
    expect(await names("/v1/bits?marking=missing")).toEqual(["Worn"]);
  });

  test("which are out of use, and why", async () => {
    expect(await names("/v1/bits?state=held")).toEqual(["Held"]);
    const [bit] = await asked("/v1/bits?state=retired");
    expect(bit).toMatchObject({ name: "Retired", retirement: { reason: "A tooth is gone." } });
  });

  test("what is used most, by pages, equal ones in order of age", async () => {
    expect(await namesIn("/v1/stock/most-used")).toEqual(["Panel", "Small", "Worn", "Retired"]);
    const [first] = await asked("/v1/stock/most-used");
    expect(first).toMatchObject({ minutes: 9, metres: 18 });
    const seen: string[] = [];
    let url: string | null = "/v1/stock/most-used?limit=1";
    while (url !== null) {
      const { body }: { body: { data: { bit: Bit }[]; nextCursor: string | null } } = await shop.ask(
        "GET",
        url,
      );
      seen.push(...body.data.map(({ bit }) => bit.name));
      url = body.nextCursor === null ? null : `/v1/stock/most-used?limit=1&cursor=${body.nextCursor}`;
    }
    expect(seen).toEqual(["Panel", "Small", "Worn", "Retired"]);
  });

  test("what to reorder, and why", async () => {
    expect(
      (await asked("/v1/stock/reorder")).map(({ bit, reason }: { bit: Bit; reason: string }) => [
        bit.name,
        reason,
      ]),
    ).toEqual([
      ["Worn", "last-sharpening"],
      ["Retired", "retired"],
    ]);
    await shop.ask("POST", `/v1/bits/${retired.id}/retire`, {
      body: { reason: "A tooth is gone.", isReplaced: true },
    });
    expect(await namesIn("/v1/stock/reorder")).toEqual(["Worn"]);
  });

  test("what was changed since Monday, and by whom", async () => {
    now = new Date("2026-03-05T08:00:00Z");
    const instructor = await addSomebody(shop, "instructor");
    await shop.ask("PATCH", `/v1/bits/${small.id}`, {
      body: { notes: "Left drawer." },
      headers: { "If-Match": "*", "Change-Reason": "tidied" },
      key: instructor.key,
    });
    now = new Date("2026-03-05T08:00:01Z");
    const { body } = await shop.ask("GET", "/v1/events?since=2026-03-04T00:00:00Z&type=bit.changed");
    expect(body.data).toMatchObject([{ by: instructor.keyId, subjectId: small.id, why: "tidied" }]);
    const { body: summary } = await shop.ask("GET", "/v1/events/summary?since=2026-03-04T00:00:00Z");
    expect(JSON.stringify(summary)).toContain(instructor.keyId);
  });

  test("which are due, the longest due first, by pages", async () => {
    now = new Date("2026-03-02T08:00:00Z");
    await addBit(shop, { name: "Soon", inspectionIntervalDays: 3 });
    await addBit(shop, { name: "Sooner", inspectionIntervalDays: 2 });
    now = new Date("2026-03-06T08:00:00Z");
    expect(await namesIn("/v1/stock/due")).toEqual(["Sooner", "Soon"]);
    const first = await shop.ask("GET", "/v1/stock/due?limit=1");
    const second = await shop.ask("GET", `/v1/stock/due?limit=1&cursor=${first.body.nextCursor}`);
    expect([first, second].map(({ body }) => body.data[0].bit.name)).toEqual(["Sooner", "Soon"]);
    expect(second.body.nextCursor).toBeNull();
  });
});

test("a bit fits a router exactly when a plan would not refuse it for its speed or its shank", async () => {
  const own = await openShop();
  const bitIds: string[] = [];
  for (const [diameterMm, markedMaxRpm] of [
    [6, undefined],
    [19, 18_000],
    [32, undefined],
    [50, 16_000],
    [64, undefined],
    [76, 12_000],
    [80, undefined],
  ] as const) {
    const form = { kind: "straight", diameterMm, cuttingLengthMm: 20 };
    const bit = { ...STRAIGHT_BIT, form, shankDiameterMm: diameterMm < 30 ? 6.35 : 12.7 };
    bitIds.push((await addBit(own, { ...bit, notes: undefined, massG: undefined, markedMaxRpm })).id);
  }
  for (const [minRpm, colletDiametersMm] of [
    [8000, [6.35, 12.7]],
    [10_500, undefined],
    [11_500, [6.35, 12.7]],
    [12_000, [12.7]],
    [14_500, [6.3, 12.75]],
    [16_000, [6.35]],
    [20_000, undefined],
    [24_000, [6.35, 12.7]],
  ] as const) {
    const router = await addRouter(own, {
      ...{ minRpm, maxRpm: minRpm + 2000, dial: { marks: { first: 1, last: 3 } } },
      colletDiametersMm,
    });
    const { body } = await own.ask("POST", "/v1/plans/shop-table", {
      body: { bitIds, routerIds: [router.id], woodIds: ["black-cherry"], mounting: "table" },
    });
    const runs = body.rows
      .filter(({ rpm }: { rpm: number | null }) => rpm !== null)
      .map(({ bitId }: { bitId: string }) => bitId);
    const { body: list } = await own.ask("GET", `/v1/bits?fitsRouterId=${router.id}`);
    expect(
      list.data.map(({ id }: Bit) => id),
      `from ${minRpm} rpm`,
    ).toEqual(runs);
  }
});

test("questions about stock are for staff", async () => {
  const member = await addSomebody(shop, "member");
  for (const what of ["due", "most-used", "reorder"]) {
    expect((await shop.ask("GET", `/v1/stock/${what}`, { key: member.key })).status).toBe(403);
  }
});

test("a cursor of another list is refused, never taken for the first page", async () => {
  const { body: rack } = await shop.ask("GET", "/v1/bits?limit=1");
  const { body: routers } = await shop.ask("GET", "/v1/routers?limit=1");
  const { body: used } = await shop.ask("GET", "/v1/stock/most-used?limit=1");
  const foreign = [
    `/v1/bits?cursor=${routers.nextCursor}`,
    `/v1/stock/most-used?cursor=${rack.nextCursor}`,
    `/v1/stock/due?cursor=${routers.nextCursor}`,
    `/v1/bits?cursor=${used.nextCursor}`,
    `/v1/stock/most-used?cursor=${Buffer.from("x~bit_1").toString("base64url")}`,
  ];
  for (const url of foreign) {
    const answer = await shop.ask("GET", url);
    expect(answer.status, url).toBe(422);
    expect(answer.body.errors).toMatchObject([{ in: "query", pointer: "/cursor" }]);
  }
});
