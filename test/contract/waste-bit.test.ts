import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addBit, addSomebody, STRAIGHT_BIT } from "./crib.ts";
import { openShop, type Shop } from "./shop.ts";

/** A dovetail whose waist is 9 mm at 12 mm of depth; its groove is wasted first with a straight bit no wider than the waist (common practice). */
const DOVETAIL_GROOVE = {
  bit: {
    form: { kind: "dovetail", diameterMm: 15, angleDeg: 14, cuttingLengthMm: 12 },
    shankDiameterMm: 12.7,
    wings: 2,
  },
  router: { minRpm: 8000, maxRpm: 24_000, dial: { marks: { first: 1, last: 6 } }, colletDiametersMm: [12.7] },
  mounting: "table",
  woodId: "sugar-maple",
  cut: { kind: "groove", depthMm: 12, edges: [{ lengthMm: 600, grain: "long" }] },
};

let shop: Shop;
let sevenId: string;
const straight = (name: string, diameterMm: number, given: object = {}) =>
  addBit(shop, {
    ...STRAIGHT_BIT,
    name,
    form: { kind: "straight", diameterMm, cuttingLengthMm: 25.4 },
    massG: undefined,
    markedMaxRpm: undefined,
    ...given,
  });

beforeAll(async () => {
  shop = await openShop({}, undefined, afterAll);
  await straight("Straight, 10 mm", 10);
  await straight("Straight, 6 mm", 6);
  sevenId = (await straight("Straight, 7 mm", 7)).id;
  await straight("Short straight, 7.5 mm", 7.5, {
    form: { kind: "straight", diameterMm: 7.5, cuttingLengthMm: 8 },
  });
  await straight("Straight on a thin shank, 7.6 mm", 7.6, { shankDiameterMm: 6.35 });
  const held = await straight("Held straight, 7.7 mm", 7.7);
  const answer = await shop.ask("POST", `/v1/bits/${held.id}/hold`, { body: { reason: "It fell." } });
  expect(answer.status, answer.text).toBe(200);
});

const preview = async (request: object, key?: string) => {
  const { status, body, text } = await shop.ask("POST", "/v1/plans/preview", {
    body: request,
    ...(key !== undefined && { key }),
  });
  expect(status, text).toBe(200);
  return body;
};
const wasteStep = (plan: { steps: { code: string; text: string; bitId?: string }[] }) =>
  plan.steps.find(({ code }) => code === "waste-groove");

describe("what a groove is wasted with first", () => {
  test("is named: the widest straight bit of the rack that fits, is long enough and at hand", async () => {
    const plan = await preview(DOVETAIL_GROOVE);
    const { text } = plan.findings.find(({ code }: { code: string }) => code === "waste-first");
    expect(text).toContain("Straight, 7 mm of the rack");
    expect(wasteStep(plan)).toMatchObject({
      bitId: sevenId,
      text: expect.stringContaining("Straight, 7 mm of the rack"),
    });
  });

  test("is another once that one is gone, and the plan is the same plan", async () => {
    const before = await preview(DOVETAIL_GROOVE);
    const path = `/v1/bits/${sevenId}`;
    await shop.ask("POST", `${path}/hold`, { body: { reason: "A chipped edge." } });
    const after = await preview(DOVETAIL_GROOVE);
    expect(wasteStep(after)?.text).toContain("Straight, 6 mm of the rack");
    expect(wasteStep(after)?.text).toContain("in runs side by side");
    expect(after.digest).toBe(before.digest);
    expect(after.passes).toEqual(before.passes);
  });

  test("is named in a batch and in a stored plan too", async () => {
    const { body } = await shop.ask("POST", "/v1/plans/preview-batch", {
      body: { requests: [DOVETAIL_GROOVE] },
    });
    expect(wasteStep(body.results[0].plan)?.bitId).toBeDefined();
    const stored = await shop.ask("POST", "/v1/plans", { body: DOVETAIL_GROOVE });
    expect(wasteStep(stored.body.plan)?.bitId).toBeDefined();
  });

  test("is not named to a key that may not see the rack", async () => {
    const { key } = await addSomebody(shop, "member", { scopes: ["plans:compute"] });
    const step = wasteStep(await preview(DOVETAIL_GROOVE, key));
    expect(step?.bitId).toBeUndefined();
    expect(step?.text).toContain("with a straight bit");
    expect(step?.text).not.toContain("rack");
  });

  test("is no business of a plan that wastes nothing", async () => {
    const plain = { ...STRAIGHT_BIT, name: undefined, massG: undefined };
    const plan = await preview({ ...DOVETAIL_GROOVE, bit: plain });
    expect(wasteStep(plan)).toBeUndefined();
  });
});
