import { describe, expect, test } from "vitest";
import { openShop, PANEL_BIT, TABLE_ROUTER } from "./shop.ts";

const { name: _bit, notes: _notes, ...bit } = PANEL_BIT;
const { name: _router, ...router } = TABLE_ROUTER;
const DOOR = { name: "Left door", widthMm: 300, heightMm: 500, count: 2 };
const RAISED = {
  openings: [DOOR, { name: "Drawer", widthMm: 500, heightMm: 300, grainAlong: "width", count: 3 }],
  groove: { depthMm: 10, widthMm: 6.35 },
  thicknessMm: 19,
  woodId: "black-cherry",
  moisture: { percent: 8, tolerancePercent: 1 },
  climate: {
    driest: { relativeHumidityPercent: 30, temperatureC: 21.1 },
    wettest: { relativeHumidityPercent: 60, temperatureC: 21.1 },
  },
  ...{ bit: { ...bit, form: { ...bit.form, tongueWidthMm: 10 } }, router, mounting: "table" },
};

type Told = { code: string; text: string };

const sized = async (more: object = {}) => {
  const { ask } = await openShop();
  const { status, body, text } = await ask("POST", "/v1/panels/size", { body: { ...RAISED, ...more } });
  expect(status, text).toBe(200);
  return body;
};

describe("the work on the edges of panels", () => {
  test("the plan knows the piece: how many, which face is down, and no assumption that it is not described", async () => {
    const { plan } = (await sized()).work;
    const said = [...plan.steps, ...plan.precautions].map(({ text }: Told) => text).join(" ");
    expect(said).toContain("of all 5 pieces");
    expect(said).toContain("Keep the best face of every piece down throughout");
    expect(plan.assumptions.map(({ code }: Told) => code)).not.toContain("work-not-described");
  });

  test("panels of several sizes say of the piece only what they share", async () => {
    // 100 mm narrower, and as long along the grain.
    const openings = [DOOR, { name: "Small door", widthMm: 200, heightMm: 500 }];
    const { work, edges } = await sized({ openings });
    const { plan } = work;
    expect(plan.verdict).not.toBe("do-not-run");
    const steps = plan.steps.map(({ text }: Told) => text).join(" ");
    expect(steps).not.toContain("pieces");
    expect(edges.length).toBe(3);
  });

  test("by hand the profiled face is up: the other one lies on the bench", async () => {
    const { plan } = (await sized({ mounting: "handheld" })).work;
    const said = plan.precautions.map(({ text }: Told) => text).join(" ");
    expect(said).toContain("Keep the other face of every piece down throughout");
  });
});
