import { formOutline, type Profile, profileAfter } from "@rimwise/domain";
import { describe, expect, test } from "vitest";
import { openShop, PANEL_BIT, TABLE_ROUTER } from "./shop.ts";

describe("the profile of the work in a plan", () => {
  const request = {
    bit: { form: PANEL_BIT.form, shankDiameterMm: 12.7, wings: 2, massG: 340 },
    router: { minRpm: TABLE_ROUTER.minRpm, maxRpm: TABLE_ROUTER.maxRpm, dial: TABLE_ROUTER.dial },
    mounting: "table",
    woodId: "black-cherry",
    cut: { kind: "panel", thicknessMm: 19, edges: [{ lengthMm: 400, grain: "long" }] },
  };

  test("is given for each pass if it is asked for, and takes off what the passes remove", async () => {
    const { ask } = await openShop();
    const { status, body } = await ask("POST", "/v1/plans/preview?profiles=true", { body: request });
    expect(status).toBe(200);
    expect(body.profiles.map(({ pass }: { pass: number }) => pass)).toEqual(
      body.passes.map(({ number }: { number: number }) => number),
    );
    let removed = 0;
    body.profiles.forEach(({ pieces }: { pieces: Profile }, index: number) => {
      removed += body.passes[index].removedAreaMm2;
      const [{ boundary } = { boundary: [] }] = pieces;
      const depth = Math.max(...boundary.map(({ xMm }) => xMm));
      expect(Math.abs(depth * 19 - areaOf(boundary) - removed)).toBeLessThan(0.02 * 60);
    });
    expect(removed).toBeGreaterThan(50);
  });

  test("is that of the geometry at the last setting", async () => {
    const { ask } = await openShop();
    const { body } = await ask("POST", "/v1/plans/preview?profiles=true", { body: request });
    const { heightMm, fenceMm } = body.passes.at(-1);
    const [want] = profileAfter(
      formOutline({
        kind: "panel-raising",
        diameterMm: 88.9,
        pilotDiameterMm: 22,
        profileHeightMm: 12,
        face: "cove",
      }),
      { heightMm, fenceMm, thicknessMm: 19 },
      { sides: 1 },
    );
    expect(areaOf(body.profiles.at(-1).pieces[0].boundary)).toBeCloseTo(areaOf(want?.boundary ?? []), 0);
  });

  test("is omitted if it is not asked for, and with false", async () => {
    const { ask } = await openShop();
    expect((await ask("POST", "/v1/plans/preview", { body: request })).body.profiles).toBeUndefined();
    expect(
      (await ask("POST", "/v1/plans/preview?profiles=false", { body: request })).body.profiles,
    ).toBeUndefined();
  });
});

function areaOf(boundary: readonly { xMm: number; zMm: number }[]): number {
  const twice = boundary.reduce((sum, { xMm, zMm }, index) => {
    const next = boundary[(index + 1) % boundary.length] ?? { xMm, zMm };
    return sum + xMm * next.zMm - next.xMm * zMm;
  }, 0);
  return Math.abs(twice) / 2;
}
