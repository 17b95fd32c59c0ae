import { expect, test } from "vitest";
import { openShop, PANEL_BIT } from "./shop.ts";

const PREFIX = "/tools/rimwise";

test("behind a proxy that serves it below a path, every address in an answer has that path", async () => {
  const { ask } = await openShop({ RIMWISE_PUBLIC_URL: `https://shop.example${PREFIX}` });
  const headers = { "Idempotency-Key": "once" };
  const first = await ask("POST", "/v1/bits", { body: PANEL_BIT, headers });
  expect(first.headers["location"]).toBe(`${PREFIX}/v1/bits/${first.body.id}`);
  const again = await ask("POST", "/v1/bits", { body: PANEL_BIT, headers });
  expect(again.headers["location"], "a kept answer too, once").toBe(`${PREFIX}/v1/bits/${first.body.id}`);
  await ask("POST", "/v1/bits", { body: PANEL_BIT });
  const page = await ask("GET", "/v1/bits?limit=1");
  expect(page.headers["link"]).toMatch(new RegExp(`^<${PREFIX}/v1/bits\\?.+>; rel="next"$`));
});

test("without a path the addresses are the service's own", async () => {
  const { ask } = await openShop({ RIMWISE_PUBLIC_URL: "https://shop.example" });
  const { headers, body } = await ask("POST", "/v1/bits", { body: PANEL_BIT });
  expect(headers["location"]).toBe(`/v1/bits/${body.id}`);
});
