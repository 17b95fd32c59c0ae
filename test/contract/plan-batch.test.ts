import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openShop, PANEL_BIT, type Shop, TABLE_ROUTER } from "./shop.ts";

const { name: _bitName, notes: _notes, ...BIT } = PANEL_BIT;
const { name: _routerName, ...ROUTER } = TABLE_ROUTER;

const GOOD = {
  bit: BIT,
  router: ROUTER,
  mounting: "table",
  woodId: "black-cherry",
  cut: { kind: "panel", thicknessMm: 19, edges: [{ lengthMm: 310, grain: "end" }] },
};

let shop: Shop;
beforeAll(async () => {
  shop = await openShop({}, undefined, afterAll);
});

const batch = (requests: object[]) => shop.ask("POST", "/v1/plans/preview-batch", { body: { requests } });

describe("a batch of previews", () => {
  test("answers each in order, with its own plan or problem", async () => {
    const { status, body } = await batch([
      GOOD,
      { ...GOOD, woodId: "no-such-wood" },
      { ...GOOD, mounting: "handheld" },
      { ...GOOD, bit: { ...BIT, wings: "two" } },
      { ...GOOD, woodId: "sugar-maple" },
    ]);
    expect(status).toBe(200);
    const [good, unknownWood, refused, misshapen, maple] = body.results;
    expect(good.plan).toEqual((await shop.ask("POST", "/v1/plans/preview", { body: GOOD })).body);
    expect(unknownWood.problem).toMatchObject({ status: 422, errors: [{ pointer: "/woodId" }] });
    expect(refused.plan.verdict).toBe("do-not-run");
    expect(misshapen.problem).toMatchObject({ status: 422, errors: [{ pointer: "/bit/wings" }] });
    expect(maple.plan.wood.id).toBe("sugar-maple");
    for (const { outcome, ...result } of body.results)
      expect(Object.keys(result)).toEqual([outcome === "planned" ? "plan" : "problem"]);
  });

  test.each([2, 3, 20, 0])(
    "plans for a dial of letters with %d steps from one to the next",
    async (steps) => {
      const lettered = { minRpm: 8000, maxRpm: 24_000, dial: { marks: { first: "A", last: "E" }, steps } };
      const { status, body } = await batch([GOOD, { ...GOOD, router: lettered }]);
      expect(status).toBe(200);
      const { mark } = body.results[1].plan.speed;
      expect(mark).toMatch(/^[A-E](\.\d{1,2})?$/);
      // What is written can be read: as a reading at that mark, and in a trial.
      const known = {
        ...lettered,
        dial: { ...lettered.dial, readings: [{ mark, rpm: body.results[1].plan.speed.rpm }] },
      };
      const again = await shop.ask("POST", "/v1/plans/preview", { body: { ...GOOD, router: known } });
      expect(again.status, again.text).toBe(200);
    },
  );

  test("leaves none of many misshapen requests unnoticed", async () => {
    const { body } = await batch(
      Array.from({ length: 120 }, (_, index) => (index === 119 ? GOOD : { ...GOOD, mounting: "hung" })),
    );
    expect(body.results.filter(({ problem }: { problem?: object }) => problem !== undefined)).toHaveLength(
      119,
    );
    expect(body.results[119].plan.verdict).toBe("run-with-care");
  });

  test("is refused whole if it is not a list of requests, or too long", async () => {
    expect((await batch([])).body.errors).toMatchObject([{ pointer: "/requests" }]);
    expect((await batch(Array.from({ length: 1001 }, () => ({})))).status).toBe(422);
    const { body } = await shop.ask("POST", "/v1/plans/preview-batch", {
      body: { requests: [GOOD], more: 1 },
    });
    expect(body.errors).toMatchObject([{ pointer: "/more" }]);
  });

  test("takes a thousand at once", async () => {
    const { status, body } = await batch(Array.from({ length: 1000 }, () => GOOD));
    expect(status).toBe(200);
    expect(body.results).toHaveLength(1000);
  });
});

describe("the table of a shop", () => {
  test("has a row for every bit in every router in every wood", async () => {
    const bit = (await shop.ask("POST", "/v1/bits", { body: PANEL_BIT })).body;
    const slow = (await shop.ask("POST", "/v1/routers", { body: TABLE_ROUTER })).body;
    const fast = (
      await shop.ask("POST", "/v1/routers", { body: { name: "One speed", minRpm: 23000, maxRpm: 23000 } })
    ).body;
    const { status, body } = await shop.ask("POST", "/v1/plans/shop-table", {
      body: {
        bitIds: [bit.id],
        routerIds: [slow.id, fast.id],
        woodIds: ["black-cherry", "mdf"],
        mounting: "table",
      },
    });
    expect(status).toBe(200);
    expect(
      body.rows.map(({ routerId, woodId }: { routerId: string; woodId: string }) => [routerId, woodId]),
    ).toEqual([
      [slow.id, "black-cherry"],
      [slow.id, "mdf"],
      [fast.id, "black-cherry"],
      [fast.id, "mdf"],
    ]);
    expect(body.rows[0]).toMatchObject({ verdict: "run-with-care", ceilingRpm: 12000 });
    expect(body.rows[0].rpm).toBeLessThanOrEqual(12000);
    expect(body.rows[2]).toMatchObject({ verdict: "do-not-run", rpm: null, mark: null, passes: 0 });
    expect(body.rows[2].reason).toMatch(/slower router/);
  });

  test("has a row that says why for a bit that goes into no collet of a router", async () => {
    const bit = (await shop.ask("POST", "/v1/bits", { body: PANEL_BIT })).body;
    const small = { ...TABLE_ROUTER, name: "Small", colletDiametersMm: [6.35] };
    const router = (await shop.ask("POST", "/v1/routers", { body: small })).body;
    const { body } = await shop.ask("POST", "/v1/plans/shop-table", {
      body: { bitIds: [bit.id], routerIds: [router.id], woodIds: ["mdf"], mounting: "table" },
    });
    expect(body.rows).toMatchObject([
      { verdict: "do-not-run", ceilingRpm: null, reason: expect.stringMatching(/collet/) },
    ]);
  });

  test("names every record that is not kept", async () => {
    const { status, body } = await shop.ask("POST", "/v1/plans/shop-table", {
      body: { bitIds: ["bit_0"], routerIds: ["router_0"], woodIds: ["mdf", "tin"], mounting: "table" },
    });
    expect(status).toBe(422);
    expect(body.errors.map(({ pointer }: { pointer: string }) => pointer)).toEqual([
      "/bitIds/0",
      "/routerIds/0",
      "/woodIds/1",
    ]);
  });
});
