import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openShop, type Shop } from "./shop.ts";

let shop: Shop;
beforeAll(async () => {
  shop = await openShop({}, () => new Date("2026-03-02T08:00:00.000Z"), afterAll);
});

const RABBET = {
  bit: {
    form: { kind: "straight", diameterMm: 19.05, cuttingLengthMm: 25.4 },
    shankDiameterMm: 12.7,
    wings: 2,
  },
  router: { minRpm: 8000, maxRpm: 24_000, dial: { marks: { first: 1, last: 6 } }, inputPowerW: 2000 },
  mounting: "table",
  woodId: "black-cherry",
  cut: { kind: "rabbet", depthMm: 9.53, widthMm: 8, edges: [{ lengthMm: 600, grain: "long" }] },
};
const stored = async (request: object = RABBET, query = "") =>
  (await shop.ask("POST", `/v1/plans${query}`, { body: request })).body;
const correct = (id: string, body: object) => shop.ask("POST", `/v1/plans/${id}/corrections`, { body });

describe("a test piece", () => {
  test("is asked for before the last pass cuts the work, with what to measure on it", async () => {
    const { plan } = await stored();
    expect(plan.testPiece).toEqual({ depthMm: 9.53, widthMm: 8 });
    const codes = plan.steps.map(({ code }: { code: string }) => code);
    expect(codes.lastIndexOf("set-height")).toBe(codes.indexOf("test-piece") - 1);
    expect(codes.lastIndexOf("cut-edges")).toBe(codes.indexOf("test-piece") + 1);
  });

  test("is set in steps that people can make, and the cut's own setting at the end", async () => {
    const heights = async (query: string) =>
      (await stored(RABBET, query)).plan.passes.map(({ heightMm }: { heightMm: number }) => heightMm);
    const metric: number[] = await heights("");
    const imperial: number[] = await heights("?units=imperial");
    expect(metric.at(-1)).toBe(9.53);
    expect(imperial.at(-1)).toBe(9.53);
    for (const height of metric.slice(0, -1))
      expect(Math.abs(height * 10 - Math.round(height * 10))).toBeLessThan(1e-9);
    for (const height of imperial.slice(0, -1)) {
      const marks = (height / 25.4) * 64;
      // 1/64 in, written to a hundredth of a millimetre.
      expect(Math.abs(marks - Math.round(marks))).toBeLessThan((0.0051 / 25.4) * 64);
    }
    expect(metric.length).toBeGreaterThan(1);
  });
});

describe("a correction", () => {
  test("answers the new height: 0.3 mm too shallow, raise 0.3 mm", async () => {
    const { id, version } = await stored();
    const { status, body } = await correct(id, { depthMm: 9.23 });
    expect(status).toBe(200);
    expect(body.version).toBe(version + 1);
    expect(body.corrections).toHaveLength(1);
    expect(body.corrections[0]).toMatchObject({ measured: { depthMm: 9.23 }, heightMm: 9.83, fenceMm: 1.53 });
    expect(body.corrections[0].texts[0]).toMatch(/^0\.3 mm .*too shallow: raise the bit 0\.3 mm/);
  });

  test("goes on from the one before, and leaves what was computed as it was", async () => {
    const { id, plan } = await stored();
    await correct(id, { depthMm: 9.23, widthMm: 8.4 });
    const { body } = await correct(id, { depthMm: 9.63 });
    expect(
      body.corrections.map(({ heightMm, fenceMm }: { heightMm: number; fenceMm: number }) => [
        heightMm,
        fenceMm,
      ]),
    ).toEqual([
      [9.83, 1.93],
      [9.73, 1.93],
    ]);
    expect(body.plan).toEqual(plan);
    expect((await shop.ask("GET", `/v1/plans/${id}`)).body.corrections).toEqual(body.corrections);
    const { body: events } = await shop.ask("GET", `/v1/events?subjectId=${id}`);
    expect(events.data.map(({ type }: { type: string }) => type)).toContain("plan.corrected");
  });

  test("by hand lowers the bit for a cut that is too shallow", async () => {
    const { id } = await stored({ ...RABBET, mounting: "handheld" });
    const { body } = await correct(id, { depthMm: 9.23 });
    expect(body.corrections[0].texts[0]).toMatch(/too shallow: lower the bit 0\.3 mm .* below the base/);
  });

  test.each([
    ["nothing measured", {}, ""],
    ["a depth that no setting explains", { depthMm: 1 }, "/depthMm"],
    ["a field of something else", { lengthMm: 3 }, ""],
  ])("refuses %s and changes nothing", async (_, measured, pointer) => {
    const { id, version } = await stored();
    const { status, body } = await correct(id, measured);
    expect(status).toBe(422);
    if (pointer !== "") expect(body.errors[0].pointer).toBe(pointer);
    expect((await shop.ask("GET", `/v1/plans/${id}`)).body.version).toBe(version);
  });

  test("refuses a width that the bit alone decides", async () => {
    const { id } = await stored({
      ...RABBET,
      cut: { kind: "groove", depthMm: 6, edges: [{ lengthMm: 600, grain: "long" }] },
    });
    const { status, body } = await correct(id, { widthMm: 19 });
    expect(status).toBe(422);
    expect(body.errors[0]).toMatchObject({ pointer: "/widthMm" });
  });
});

describe("a correction of a plan that nobody keeps", () => {
  const preview = (more: object, query = "?units=metric") =>
    shop.ask("POST", `/v1/plans/preview-correction${query}`, { body: { ...RABBET, ...more } });

  test("answers the new setting and keeps nothing", async () => {
    const before = (await shop.ask("GET", "/v1/plans")).body.data.length;
    const { status, body } = await preview({ measured: { depthMm: 9.23, widthMm: 8.4 } });
    expect(status).toBe(200);
    expect(body).toMatchObject({ heightMm: 9.83, cutterMm: 9.83, fenceMm: 1.93 });
    expect(body.texts[0]).toMatch(/^0\.3 mm too shallow: raise the bit 0\.3 mm/);
    expect((await shop.ask("GET", "/v1/plans")).body.data).toHaveLength(before);
  });

  test("goes on from the setting that the test piece was cut at", async () => {
    const { body: first } = await preview({ measured: { depthMm: 9.23, widthMm: 8.4 } });
    const { heightMm, fenceMm } = first;
    const { body } = await preview({ measured: { depthMm: 9.63 }, cutAt: { heightMm, fenceMm } });
    expect(body).toMatchObject({ heightMm: 9.73, cutterMm: 9.73, fenceMm: 1.93 });
  });

  test("says what a stored plan's correction says", async () => {
    const { id } = await stored(RABBET, "?units=imperial");
    const { body: kept } = await correct(id, { depthMm: 9.23 });
    const { body } = await preview({ measured: { depthMm: 9.23 } }, "?units=imperial");
    expect(body.texts).toEqual(kept.corrections[0].texts);
  });

  test.each([
    ["nothing measured", { measured: {} }, "/measured"],
    ["a depth that no setting explains", { measured: { depthMm: 1 } }, "/measured/depthMm"],
    [
      "a plan that must not be run",
      { measured: { depthMm: 9 }, router: { minRpm: 30_000, maxRpm: 30_000 } },
      "/measured",
    ],
    ["no measure at all", {}, "/measured"],
  ])("refuses %s", async (_, more, pointer) => {
    const { status, body } = await preview(more);
    expect(status).toBe(422);
    expect(body.errors[0].pointer).toBe(pointer);
  });
});
