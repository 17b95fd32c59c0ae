import { setTimeout as sleep } from "node:timers/promises";
import { openShopStore } from "@rimwise/shop";
import { expect, onTestFinished, test } from "vitest";
import { readAddress } from "../../services/shop/src/store/postgresql/address.ts";
import { openBell } from "../../services/shop/src/store/postgresql/bell-between.ts";
import { behindTheService } from "../../services/shop/testing/behind-the-service.ts";
import { freeSchema, newSchema } from "../../services/shop/testing/database-under-test.ts";
import { newBit, STAMP } from "../../services/shop/testing/new-bit.ts";
import { describeOnPostgresql } from "../../services/shop/testing/one-engine.ts";

const never = new AbortController().signal;
const PATIENCE_MS = 10_000;
/** Long enough to look for what was not heard twice. */
const TWO_LOOKS_MS = 2500;

/** Two processes' stores of one shop, as far as the bell can tell. */
async function twoStores(server: string) {
  const url = newSchema(server);
  onTestFinished(() => freeSchema(url));
  const [here, elsewhere] = [
    await openShopStore(url),
    await openShopStore(`${url}&application_name=elsewhere`),
  ];
  onTestFinished(async () => {
    await here.close();
    await elsewhere.close();
  });
  let bits = 0;
  const commit = async () => {
    bits += 1;
    const result = await here.commit({ stamp: STAMP, changes: newBit(`bit_${bits}`).changes });
    expect(result.kind).toBe("committed");
  };
  return { url, here: here.bell, elsewhere: elsewhere.bell, commit };
}

const heardAfter = (
  { wait }: { readonly wait: (heard: number, ms: number, signal: AbortSignal) => Promise<boolean> },
  heard: number,
) => wait(heard, PATIENCE_MS, never);

describeOnPostgresql("the bell of a shop", (server) => {
  test("rings here at once, and elsewhere soon", async () => {
    const { here, elsewhere, commit } = await twoStores(server);
    await commit();
    expect(here.rings()).toBe(1);
    expect(await heardAfter(elsewhere, 0)).toBe(true);
    // Who has rung it does not hear themselves a second time.
    expect(here.rings()).toBe(1);
  });

  test("does not ring for another shop of the same server", async () => {
    const [one, other] = [await twoStores(server), await twoStores(server)];
    await one.commit();
    expect(await heardAfter(one.elsewhere, 0)).toBe(true);
    expect([other.here.rings(), other.elsewhere.rings()]).toEqual([0, 0]);
  });

  test("rings again after the connection that listens was killed, also for what was said meanwhile", async () => {
    const { url, elsewhere, commit } = await twoStores(server);
    const killed = await behindTheService({ file: url }, ({ rows }) =>
      rows(
        "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE application_name = 'elsewhere' AND query LIKE 'LISTEN%' AND query LIKE '%' || current_schema() || '%'",
      ),
    );
    expect(killed).toHaveLength(1);
    await commit();
    expect(await heardAfter(elsewhere, 0)).toBe(true);
    const heard = elsewhere.rings();
    await commit();
    expect(await heardAfter(elsewhere, heard)).toBe(true);
  });

  test("asks and tells while the server is slow, and the driver has nothing to complain of", async () => {
    const url = newSchema(server);
    onTestFinished(() => freeSchema(url));
    await (await openShopStore(url)).close();
    const complaints: string[] = [];
    const complain = ({ message }: Error) => void complaints.push(message);
    process.on("warning", complain);
    onTestFinished(() => void process.off("warning", complain));
    const bell = await openBell(readAddress(url));
    onTestFinished(() => bell.close());
    await behindTheService({ file: url }, async ({ run }) => {
      await run("BEGIN; LOCK TABLE events IN ACCESS EXCLUSIVE MODE");
      const until = performance.now() + TWO_LOOKS_MS;
      while (performance.now() < until) {
        bell.committed();
        await sleep(100);
      }
      await run("ROLLBACK");
    });
    await expect.poll(() => bell.lag().roundTripS).toBeGreaterThan(0);
    expect(complaints).toEqual([]);
  });
});
