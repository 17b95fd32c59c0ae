import { expect, test } from "vitest";
import { describeOnPostgresql } from "../../services/shop/testing/one-engine.ts";
import { openShop, PANEL_BIT } from "../contract/shop.ts";

describeOnPostgresql("the metrics of a shop on PostgreSQL", () => {
  test("say how many connections there are, who waits for one, and how late the database is", async () => {
    const { ask } = await openShop();
    await ask("POST", "/v1/bits", { body: PANEL_BIT });
    const value = async (name: string) => {
      const { text } = await ask("GET", "/metrics");
      return Number(new RegExp(`^${name.replaceAll(/[{}"]/g, "\\$&")} (\\S+)$`, "m").exec(text)?.[1]);
    };
    const idle = await value('database_pool_connections{state="idle"}');
    const inUse = await value('database_pool_connections{state="in-use"}');
    expect(idle + inUse).toBeGreaterThanOrEqual(1);
    expect(await value("database_pool_waiting")).toBe(0);
    await expect.poll(() => value("database_round_trip_seconds"), { timeout: 5000 }).toBeGreaterThan(0);
    const { text } = await ask("GET", "/metrics");
    expect(text).not.toMatch(/^database_standby_lag_seconds \S/m);
  });
});
