import { buildApp, grantFirstKey, openShopStore, readConfig } from "@rimwise/shop";
import { expect, onTestFinished, test } from "vitest";
import { openShop, PANEL_BIT } from "./shop.ts";

test("the process says to anybody that it is alive, ready and which version it is", async () => {
  const { ask } = await openShop();
  expect((await ask("GET", "/livez", { key: null })).body).toEqual({ status: "alive" });
  expect((await ask("GET", "/readyz", { key: null })).body).toEqual({
    status: "ready",
    checks: { database: true, migrations: true, disk: true, writable: true, open: true },
  });
  expect((await ask("GET", "/version", { key: null })).body.name).toBe("rimwise");
});

test("metrics carry the route's pattern and never an id", async () => {
  const { ask } = await openShop();
  const { body: bit } = await ask("POST", "/v1/bits", { body: PANEL_BIT });
  await ask("GET", `/v1/bits/${bit.id}`);
  expect((await ask("GET", "/metrics", { key: null })).status).toBe(401);
  const monitor = { name: "Monitor", role: "manager", scopes: ["metrics:read"] };
  const { key } = (await ask("POST", "/v1/keys", { body: monitor })).body;
  const { text } = await ask("GET", "/metrics", { key });
  expect(text).toContain(
    'http_request_duration_seconds_count{method="GET",route="/v1/bits/:bitId",status="200"} 1',
  );
  expect(text).not.toContain(bit.id);
});

test("while it shuts down it finishes what it has begun and refuses what comes after", async () => {
  const config = readConfig({
    RIMWISE_LOG_LEVEL: "silent",
    RIMWISE_DATABASE: ":memory:",
    RIMWISE_BUSY_AFTER_MS: "0",
  });
  const store = await openShopStore(config.database);
  onTestFinished(() => store.close());
  const managerKey = await grantFirstKey(store, undefined);
  const { app } = await buildApp({ config, store });
  let begin: () => void = () => {};
  let release: () => void = () => {};
  const begun = new Promise<void>((resolve) => {
    begin = resolve;
  });
  const released = new Promise<void>((resolve) => {
    release = resolve;
  });
  app.addHook("preClose", async () => {
    begin();
    await released;
  });
  const address = await app.listen({ port: 0, host: "127.0.0.1" });
  const headers = { authorization: `Bearer ${managerKey}` };
  expect((await fetch(`${address}/readyz`)).status).toBe(200);
  const closing = app.close();
  await begun;
  const refused = await fetch(`${address}/v1/bits`, { headers });
  expect(refused.status).toBe(503);
  expect(refused.headers.get("content-type")).toMatch(/^application\/problem\+json/);
  expect(refused.headers.get("retry-after")).toBe("5");
  expect(await refused.json()).toMatchObject({ code: "closing" });
  release();
  await closing;
});
