import { expect, test } from "vitest";
import { behindTheService } from "../contract/behind-the-service.ts";
import { openShop, PANEL_BIT, TABLE_ROUTER } from "../contract/shop.ts";

/** What plans have had since the versions of the computation that knew guides, test pieces and cutters. */
const NEWER = ["guide", "testPiece", "passes[0].cutterMm", "passes[1].cutterMm"];

test("a plan that an older version computed is still read, and listed, as it was kept", async () => {
  const shop = await openShop();
  const { form, shankDiameterMm, wings, massG } = PANEL_BIT;
  const { minRpm, maxRpm, dial } = TABLE_ROUTER;
  const { body: kept } = await shop.ask("POST", "/v1/plans", {
    body: {
      bit: { form, shankDiameterMm, wings, massG },
      router: { minRpm, maxRpm, dial },
      mounting: "table",
      woodId: "black-cherry",
      cut: { kind: "panel", thicknessMm: 19, edges: [{ lengthMm: 310, grain: "end" }] },
    },
  });
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
