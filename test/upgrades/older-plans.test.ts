import { expect, test } from "vitest";
import { behindTheService, changeJson } from "../../services/shop/testing/behind-the-service.ts";
import { openShop, PANEL_BIT, TABLE_ROUTER } from "../contract/shop.ts";

/** A kept plan as tests make it older. */
type Plan = Record<string, unknown> & {
  passes: { cutterMm?: number }[];
  findings: { code: string }[];
  precautions: { code: string }[];
};

const changePlans = (shop: { readonly file: string }, change: (plan: Plan) => void) =>
  behindTheService(shop, (database) => changeJson(database, ["plans", "plan"], change));

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
  await changePlans(shop, (plan) => {
    // What plans have had since the versions of the computation that knew guides, test pieces and cutters.
    delete plan["guide"];
    delete plan["testPiece"];
    for (const pass of plan.passes) delete pass.cutterMm;
  });
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
  await changePlans(shop, ({ passes }) => {
    for (const last of passes.slice(-1)) delete last.cutterMm;
  });
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
  await changePlans(shop, ({ findings, precautions }) => {
    for (const finding of findings.slice(0, 1)) finding.code = "climb-cut";
    for (const precaution of precautions.slice(0, 1)) precaution.code = "fence-side";
  });
  const { status, body } = await shop.ask("GET", `/v1/plans/${kept.id}`);
  expect(status).toBe(200);
  expect(body.plan.findings[0].code).toBe("climb-cut");
  expect(body.plan.precautions[0].code).toBe("fence-side");
});
