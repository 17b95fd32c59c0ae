import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addBit, addRouter, made } from "./crib.ts";
import { PROFILE } from "./furnish.ts";
import { KITCHEN_ROUTER } from "./kitchen.ts";
import { openShop, type Shop } from "./shop.ts";

let shop: Shop;
const ids: Record<string, string> = {};

const SMALL = { shankDiameterMm: 12.7, wings: 2 } as const;
const RACK = {
  straight: { form: { kind: "straight", diameterMm: 25.4, cuttingLengthMm: 25.4 }, massG: 110 },
  roundOver: { form: { kind: "round-over", diameterMm: 25.4, radiusMm: 6.35 }, massG: 70 },
  cove: { form: { kind: "cove", diameterMm: 28.58, radiusMm: 9.525 }, massG: 80 },
} as const;

beforeAll(async () => {
  shop = await openShop({}, undefined, afterAll);
  for (const [name, bit] of Object.entries(RACK))
    ids[name] = (await addBit(shop, { name, ...SMALL, ...bit })).id;
  ids["router"] = (await addRouter(shop, KITCHEN_ROUTER)).id;
});

const search = async (body: object) => {
  const answer = await shop.ask("POST", "/v1/profiles/search", { body });
  expect(answer.status, answer.text).toBe(200);
  return answer.body;
};
/** The bits of some settings, each once: a quarter round is made with the work flat or standing. */
const idsIn = (settings: { bitId: string }[]) => [...new Set(settings.map(({ bitId }) => bitId))];

/** A quarter round of 6.35 mm at the front face: what the round-over leaves, to the hundredth. */
const ROUND = {
  thicknessMm: 19,
  start: { xMm: 6.35, zMm: 0 },
  segments: [{ kind: "arc", xMm: 0, zMm: 6.35, arcRadiusMm: 6.35, curve: "round" }],
};

describe("the bits that make a profile", () => {
  test("are found with the height and the fence that make it, and the others say why not", async () => {
    const { oneSetup, together, notTaken, toBuy, isComplete } = await search({ shape: ROUND });
    expect(idsIn(oneSetup)).toEqual([ids["roundOver"]]);
    // The pilot of a 25.4 mm round-over of 6.35 mm has a radius of 12.7 − 6.35 mm: the fence is where its contact is.
    expect(oneSetup[0]).toMatchObject({ work: "flat", fenceMm: 6.35, plan: null, elsewhere: null });
    expect(oneSetup[0].greatestLeftMm).toBeLessThanOrEqual(0.2);
    expect(idsIn(notTaken).sort()).toEqual([ids["straight"], ids["cove"]].sort());
    expect([together, toBuy, isComplete]).toEqual([[], [], true]);
  });

  test("are planned for the machine that is named: verdict, speed, passes and who has them", async () => {
    const person = await made(shop, "/v1/people", { name: "A member", role: "member" });
    const loan = await made(shop, "/v1/loans", { bitId: ids["roundOver"], personId: person.id });
    const machine = { routerId: ids["router"], mounting: "table", woodId: "black-cherry" };
    const { oneSetup } = await search({ shape: ROUND, machine });
    expect(oneSetup[0]).toMatchObject({ work: "flat", plan: { verdict: "run" } });
    expect(oneSetup[0].plan.passes).toBeGreaterThan(0);
    expect(oneSetup[0].elsewhere).toContain("on loan");
    await made(shop, `/v1/loans/${loan.id}/return`, {});
    const plan = await made(shop, "/v1/plans/preview", {
      bit: { id: ids["roundOver"] },
      router: { id: ids["router"] },
      ...{ mounting: "table", woodId: "black-cherry" },
      cut: {
        kind: "edge",
        heightMm: oneSetup[0].heightMm,
        fenceMm: oneSetup[0].fenceMm,
        edges: [{ lengthMm: 1000, grain: "long" }],
        work: { lengthMm: 1000, widthMm: 150, thicknessMm: 19, count: 1 },
      },
    });
    expect([plan.verdict, plan.speed.rpm]).toEqual([oneSetup[0].plan.verdict, oneSetup[0].plan.rpm]);
  });

  test("are several together if none makes it alone: a step under a quarter round", async () => {
    // 6.35 mm round at the front face, then a step 10 mm deep from 12 mm on.
    const shape = {
      thicknessMm: 19,
      start: { xMm: 6.35, zMm: 0 },
      segments: [
        { kind: "arc", xMm: 0, zMm: 6.35, arcRadiusMm: 6.35, curve: "round" },
        { kind: "line", xMm: 0, zMm: 12 },
        { kind: "line", xMm: 10, zMm: 12 },
        { kind: "line", xMm: 10, zMm: 19 },
      ],
    };
    const { oneSetup, together } = await search({ shape });
    expect(oneSetup).toEqual([]);
    expect(idsIn(together[0]).sort()).toEqual([ids["straight"], ids["roundOver"]].sort());
  });

  test("are what to buy if nothing of the rack makes it", async () => {
    const shape = {
      thicknessMm: 19,
      start: { xMm: 12.7, zMm: 0 },
      segments: [{ kind: "arc", xMm: 0, zMm: 12.7, arcRadiusMm: 12.7, curve: "round" }],
    };
    const { oneSetup, together, toBuy } = await search({ shape });
    expect([oneSetup, together]).toEqual([[], []]);
    expect(toBuy[0]).toMatchObject({ isStandard: true, form: { kind: "round-over", radiusMm: 12.7 } });
  });

  test("are the same for a path that draws the same", async () => {
    const path = { thicknessMm: 19, path: "M 6.35 0 A 6.35 6.35 0 0 1 0 -6.35" };
    const other = { thicknessMm: 19, path: "M 6.35 0 A 6.35 6.35 0 0 0 0 -6.35" };
    const found = [await search({ shape: path }), await search({ shape: other })].map(({ oneSetup }) =>
      idsIn(oneSetup),
    );
    expect(found).toContainEqual([ids["roundOver"]]);
    expect(found[0]).not.toEqual(found[1]);
  });

  test("are not asked for with a wall that doubles back, or that is given twice or not at all", async () => {
    const [start, ...segments] = [
      [8, 0],
      [2, 5],
      [8, 10],
      [0, 10],
    ].map(([xMm, zMm]) => ({ kind: "line", xMm, zMm }));
    const asked = async (body: object) =>
      (await shop.ask("POST", "/v1/profiles/search", { body })).body.errors.map(
        ({ pointer }: { pointer: string }) => pointer,
      );
    const { kind: _, ...corner } = start ?? { kind: "" };
    const twice = { ...ROUND, path: "M 0 0 H 1" };
    expect(
      await asked({ shape: { thicknessMm: 19, start: corner, segments: segments.slice(0, 1) } }),
    ).toEqual(["/shape/segments/0"]);
    expect(await asked({ shape: twice })).toEqual(["/shape/path"]);
    expect(await asked({ shape: { thicknessMm: 19 } })).toEqual(["/shape/start"]);
    expect(await asked({})).toEqual(["/shape"]);
    expect(await asked({ profileId: "profile_0" })).toEqual(["/profileId"]);
  });
});

describe("a profile of the library", () => {
  test("is kept with where it was made and how, and searched by its id", async () => {
    const profile = await made(shop, "/v1/profiles", PROFILE);
    const setting = { bitId: ids["straight"], heightMm: 9, fenceMm: 0.7, work: "flat", face: "front" };
    const { body } = await shop.ask("POST", `/v1/profiles/${profile.id}/made`, {
      body: { place: "Hall", settings: [setting] },
    });
    expect(body.made).toMatchObject([{ place: "Hall", settings: [setting] }]);
    const { oneSetup } = await search({ profileId: profile.id });
    // A step 12 mm wide with a 25.4 mm bit: its axis stands 12.7 − 12 mm behind the fence (geometry).
    expect(oneSetup).toContainEqual(
      expect.objectContaining({
        bitId: ids["straight"],
        work: "flat",
        face: "front",
        heightMm: 9,
        fenceMm: 0.7,
      }),
    );
    const bad = { ...PROFILE.shape, segments: [{ kind: "line", xMm: 5, zMm: 9 }] };
    const refused = await shop.ask("POST", "/v1/profiles", { body: { ...PROFILE, shape: bad } });
    expect(refused.body.errors).toMatchObject([{ pointer: "/shape/segments/0" }]);
  });

  test("is made in a job, alone or in several set-ups", async () => {
    const part = { name: "Plinth", count: 4, lengthMm: 900, widthMm: 100, thicknessMm: 19 };
    const job = (shape: object) => ({
      ...{ name: "Hall", woodId: "black-cherry", machines: [{ routerId: ids["router"], mounting: "table" }] },
      parts: [{ ...part, cuts: [{ along: "one-side", wanted: { by: "profile", shape } }] }],
    });
    const alone = await made(shop, "/v1/jobs/preview", job(ROUND));
    expect(idsIn(alone.cuts)).toEqual([ids["roundOver"]]);
    expect(["flat", "standing"]).toContain(alone.setups[0].runs[0].work);
    const both = {
      thicknessMm: 19,
      start: { xMm: 6.35, zMm: 0 },
      segments: [
        { kind: "arc", xMm: 0, zMm: 6.35, arcRadiusMm: 6.35, curve: "round" },
        { kind: "line", xMm: 0, zMm: 12 },
        { kind: "line", xMm: 10, zMm: 12 },
        { kind: "line", xMm: 10, zMm: 19 },
      ],
    };
    const several = await made(shop, "/v1/jobs/preview", job(both));
    expect(idsIn(several.cuts).sort()).toEqual([ids["straight"], ids["roundOver"]].sort());
    const thick = { ...ROUND, thicknessMm: 25 };
    const refused = await shop.ask("POST", "/v1/jobs/preview", { body: job(thick) });
    expect(refused.body.errors).toMatchObject([{ pointer: "/parts/0/cuts/0/wanted/shape" }]);
  });
});
