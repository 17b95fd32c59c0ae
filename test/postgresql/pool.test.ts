import { expect, onTestFinished, test } from "vitest";
import { openDatabase } from "../../services/shop/testing/behind-the-service.ts";
import { freeSchema, newSchema } from "../../services/shop/testing/database-under-test.ts";
import { describeOnPostgresql } from "../../services/shop/testing/one-engine.ts";
import { openShop, PANEL_BIT } from "../contract/shop.ts";

/** A shop with one connection, for which nobody waits longer than a second. */
async function shopWithOneConnection(server: string) {
  const RIMWISE_DATABASE = newSchema(server, "pool_size=1&connect_timeout=1");
  onTestFinished(() => freeSchema(RIMWISE_DATABASE));
  return openShop({ RIMWISE_DATABASE });
}

describeOnPostgresql("a pool of one connection", (server) => {
  test("serves whoever asks, one after the other, and the bell rings", async () => {
    const { ask } = await shopWithOneConnection(server);
    const add = () => ask("POST", "/v1/bits", { body: PANEL_BIT });
    const answers = await Promise.all([add(), add(), ask("GET", "/v1/bits"), add(), ask("GET", "/readyz")]);
    expect(answers.map(({ status }) => status)).toEqual([201, 201, 200, 201, 200]);
  });

  test("that somebody holds for too long is a 503 that says when to come again, and goes on when it is free", async () => {
    const { ask, file } = await shopWithOneConnection(server);
    const other = await openDatabase(file);
    await other.run("BEGIN");
    await other.rows("SELECT 1 FROM writing FOR UPDATE");
    const written = ask("POST", "/v1/bits", { body: PANEL_BIT });
    await expect
      .poll(() => other.rows("SELECT 1 FROM pg_stat_activity WHERE wait_event_type = 'Lock'"))
      .not.toEqual([]);
    const refused = await ask("GET", "/v1/bits");
    expect([refused.status, refused.body.code]).toEqual([503, "busy"]);
    expect(Number(refused.headers["retry-after"])).toBeGreaterThan(0);
    await other.run("COMMIT");
    await other.close();
    expect((await written).status).toBe(201);
    expect((await ask("GET", "/v1/bits")).body.data).toHaveLength(1);
  });
});
