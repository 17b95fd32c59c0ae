import { expect, test } from "vitest";
import { behindTheService } from "../contract/behind-the-service.ts";
import { openShop, PANEL_BIT, TABLE_ROUTER } from "../contract/shop.ts";

/** What plans have had since the versions of the computation that knew guides, test pieces and cutters. */
const NEWER = ["guide", "testPiece", "passes[0].cutterMm", "passes[1].cutterMm"];

/** A raised panel in a table, planned and kept. */
function keepPanelPlan(shop: Awaited<ReturnType<typeof openShop>>) {
  const { form, shankDiameterMm, wings, massG } = PANEL_BIT;
  const { minRpm, maxRpm, dial } = TABLE_ROUTER;
  return shop.ask("POST", "/v1/plans", {
    body: {
      bit: { form, shankDiameterMm, wings, massG },
      router: { minRpm, maxRpm, dial },
      mounting: "table",
      woodId: "black-cherry",
      cut: { kind: "panel", thicknessMm: 19, edges: [{ lengthMm: 310, grain: "end" }] },
    },
  });
}

test("a plan that an older version computed is still read, and listed, as it was kept", async () => {
  const shop = await openShop();
  const { body: kept } = await keepPanelPlan(shop);
  expect(kept.plan.passes.length).toBeGreaterThan(1);
  behindTheService(shop, (database) =>
    database
      .prepare(`UPDATE plans SET plan = json_remove(plan, ${NEWER.map((path) => `'$.${path}'`).join()})`)
      .run(),
  );
  const { status, body } = await shop.ask("GET", `/v1/plans/${kept.id}`);
  expect(status).toBe(200);
  expect(body.plan.passes[0]).not.toHaveProperty("cutterMm");
  expect(body.plan.passes[0].heightMm).toBe(kept.plan.passes[0].heightMm);
  expect((await shop.ask("GET", "/v1/plans")).body.data).toHaveLength(1);
});

test("the setting of such a plan is still corrected, by the height to the tip that it knows", async () => {
  const shop = await openShop();
  const { minRpm, maxRpm, dial } = TABLE_ROUTER;
  const form = {
    kind: "round-over",
    diameterMm: 25.4,
    radiusMm: 6.35,
    pilotDiameterMm: 12.7,
    pilotHeightMm: 5,
  };
  const { body: kept } = await shop.ask("POST", "/v1/plans?units=metric", {
    body: {
      bit: { form, shankDiameterMm: 12.7, wings: 2 },
      router: { minRpm, maxRpm, dial },
      mounting: "table",
      woodId: "black-cherry",
      setIn: "metric",
      cut: { kind: "edge", thicknessMm: 19, edges: [{ lengthMm: 600, grain: "long" }] },
    },
  });
  behindTheService(shop, (database) =>
    database.prepare("UPDATE plans SET plan = json_remove(plan, '$.passes[#-1].cutterMm')").run(),
  );
  const { status, body } = await shop.ask("POST", `/v1/plans/${kept.id}/corrections`, {
    body: { depthMm: 6.05 },
  });
  expect(status).toBe(200);
  const [correction] = body.corrections;
  expect(correction.heightMm).toBeCloseTo(kept.plan.passes.at(-1).heightMm + 0.3, 6);
  expect(correction).not.toHaveProperty("cutterMm");
  expect(correction.texts).toEqual([
    "0.3 mm too shallow: raise the bit 0.3 mm, to 11.65 mm above the table.",
  ]);
});

test("a plan with codes that no longer come up is still read, and fits its schema", async () => {
  const shop = await openShop();
  const { body: kept } = await keepPanelPlan(shop);
  behindTheService(shop, (database) =>
    database
      .prepare("UPDATE plans SET plan = json_set(plan, '$.findings[0].code', ?, '$.precautions[0].code', ?)")
      .run("climb-cut", "fence-side"),
  );
  const { status, body } = await shop.ask("GET", `/v1/plans/${kept.id}`);
  expect(status).toBe(200);
  expect(body.plan.findings[0].code).toBe("climb-cut");
  expect(body.plan.precautions[0].code).toBe("fence-side");
});
