import { expect, test } from "vitest";
import { openShop, PANEL_BIT } from "../contract/shop.ts";
import { firstReleaseFile, KEPT, PASSPHRASE } from "./first-release-file.ts";

test("what the first release kept is all there, is found, is planned with, and its history is whole", async () => {
  const shop = await openShop(
    {
      RIMWISE_DATABASE: firstReleaseFile(),
      RIMWISE_FIRST_KEY: "a-first-key-that-no-new-shop-needs",
      RIMWISE_SIGNING_KEYS: ":memory:",
    },
    () => new Date("2026-04-01T08:00:00Z"),
  );
  // Shorter than one may be chosen now; it opens the shop as before.
  const ask: typeof shop.ask = (method, url, rest) => shop.ask(method, url, { key: PASSPHRASE, ...rest });
  const { body: bit } = await ask("GET", "/v1/bits/bit_1");
  expect(bit).toMatchObject({
    ...KEPT,
    name: PANEL_BIT.name,
    form: PANEL_BIT.form,
    massG: 340,
    state: "in-rack",
  });
  const { body: found } = await ask("GET", `/v1/bits?q=${encodeURIComponent("3 1/2 panel")}`);
  expect(found.data.map(({ id }: { id: string }) => id)).toEqual(["bit_1"]);
  const plan = await ask("POST", "/v1/plans/preview", {
    body: {
      bit: { id: "bit_1" },
      router: { id: "router_1" },
      mounting: "table",
      woodId: "black-cherry",
      cut: { kind: "panel", thicknessMm: 19, edges: [{ lengthMm: 310, grain: "end" }] },
    },
  });
  expect(plan.body.verdict).toBe("run-with-care");
  const { body: proof } = await ask("POST", "/v1/events/verify", { body: {} });
  expect(proof).toMatchObject({ isIntact: true, checked: 2 });
  const { body: keys } = await ask("GET", "/v1/keys");
  expect(keys.data).toMatchObject([{ role: "manager", name: "First manager" }]);
});
