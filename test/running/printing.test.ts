import { expect, test } from "vitest";
import { PANEL_BIT, TABLE_ROUTER } from "../contract/shop.ts";
import { builtService } from "./built-service.ts";
import { exited, FROM_SOURCE, start, temporaryDatabase } from "./service-process.ts";

const { name: _bit, notes: _notes, ...bit } = PANEL_BIT;
const { name: _router, ...router } = TABLE_ROUTER;
const PLAN = {
  ...{ bit, router, mounting: "table", woodId: "black-cherry" },
  cut: { kind: "panel", thicknessMm: 19, edges: [{ lengthMm: 310, grain: "end" }] },
};

test.each([
  ["as it is built", async () => [await builtService()]],
  ["from its sources", async () => FROM_SOURCE],
])("the service %s makes PDFs in a thread of its own, and ends all the same", async (_how, command) => {
  const shop = await start(await command(), temporaryDatabase());
  const answer = await fetch(`${shop.url}/v1/plans/printout`, {
    method: "POST",
    headers: { authorization: `Bearer ${shop.key}`, "content-type": "application/json" },
    body: JSON.stringify(PLAN),
  });
  expect([answer.status, answer.headers.get("content-type")]).toEqual([200, "application/pdf"]);
  const bytes = Buffer.from(await answer.arrayBuffer());
  expect(bytes.subarray(0, 5).toString()).toBe("%PDF-");
  shop.process.kill("SIGTERM");
  expect(await exited(shop)).toBe(0);
});
