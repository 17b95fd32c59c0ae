import { join } from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { count } from "../../services/shop/testing/behind-the-service.ts";
import { freeSchema, newSchema } from "../../services/shop/testing/database-under-test.ts";
import { describeOnPostgresql } from "../../services/shop/testing/one-engine.ts";
import { openShop, PANEL_BIT } from "../contract/shop.ts";
import { cuttingProxy } from "./cutting-proxy.ts";

describeOnPostgresql("a connection that is lost at COMMIT", (server) => {
  /** A shop whose way to its database can be cut, and one request to it that may be sent again. */
  async function shopBehindProxy() {
    const folder = new URL(server).searchParams.get("host") ?? "";
    const { port, cutAt, isCut } = await cuttingProxy(join(folder, ".s.PGSQL.5432"));
    const direct = newSchema(server, "pool_size=3");
    onTestFinished(() => freeSchema(direct));
    const shop = await openShop({
      RIMWISE_DATABASE: direct
        .replace(/host=[^&]+/, "host=127.0.0.1")
        .replace(/localhost:\d+/, `localhost:${port}`),
    });
    const add = () =>
      shop.ask("POST", "/v1/bits", { body: PANEL_BIT, headers: { "Idempotency-Key": "a-bit-once-9d1c" } });
    return { ...shop, direct, add, cutAt, isCut };
  }

  test("before the server heard of it is a 503, nothing is written, and sent again it is done once", async () => {
    const { add, cutAt, isCut, direct } = await shopBehindProxy();
    cutAt("before-commit");
    const lost = await add();
    expect([lost.status, lost.body.code]).toEqual([503, "busy"]);
    expect(Number(lost.headers["retry-after"])).toBeGreaterThan(0);
    expect(isCut()).toBe(true);
    expect(await count({ file: direct }, "bits")).toBe(0);
    expect((await add()).status).toBe(201);
    expect((await add()).headers["idempotent-replayed"]).toBe("true");
    expect(await count({ file: direct }, "bits")).toBe(1);
  });

  test("after the server has done it is found in the history: the answer is what it would have been", async () => {
    const { ask, add, cutAt, isCut, direct } = await shopBehindProxy();
    cutAt("after-commit");
    expect((await add()).status).toBe(201);
    expect(isCut()).toBe(true);
    expect((await add()).headers["idempotent-replayed"]).toBe("true");
    expect(await count({ file: direct }, "bits")).toBe(1);
    expect((await ask("POST", "/v1/events/verify", { body: {} })).body.isIntact).toBe(true);
  });
});
