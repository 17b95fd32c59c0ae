import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { grantFirstKey, openShopStore } from "@rimwise/shop";
import { describe, expect, onTestFinished, test } from "vitest";
import { behindTheService, newDatabase } from "../../services/shop/testing/behind-the-service.ts";
import { describeOnPostgresql } from "../../services/shop/testing/one-engine.ts";
import { sendFile, straights } from "./import-files.ts";
import { secondProcess } from "./second-process.ts";
import { openShop, PANEL_BIT, type Shop } from "./shop.ts";

/** A shop, and another service on its database. */
async function twoProcesses(settings: Record<string, string> = {}): Promise<readonly [Shop, Shop]> {
  const one = await openShop(settings);
  return [one, await secondProcess(one, settings)];
}

const bits = async ({ ask }: Shop): Promise<{ id: string; wings: number }[]> =>
  (await ask("GET", "/v1/bits?limit=200")).body.data;

describe("two processes of one shop", () => {
  test("make the first manager's key once when both start on a new database", async () => {
    const folder = mkdtempSync(join(tmpdir(), "rimwise-two-"));
    onTestFinished(() => rmSync(folder, { recursive: true }));
    const database = newDatabase(folder);
    const stores = [await openShopStore(database), await openShopStore(database)];
    const delivered: string[] = [];
    const granted = await Promise.all(
      stores.map((store) => grantFirstKey(store, undefined, { deliver: (key) => void delivered.push(key) })),
    );
    expect(granted.filter((key) => key !== undefined)).toEqual(delivered);
    expect(delivered).toHaveLength(1);
    for (const store of stores) await store.close();
  });

  test("give one answer to one request that both get at the same moment", async () => {
    const [one, other] = await twoProcesses();
    for (let round = 0; round < 8; round += 1) {
      const headers = { "Idempotency-Key": `create-${round}` };
      const both = await Promise.all(
        [one, other].map(({ ask }) => ask("POST", "/v1/bits", { body: PANEL_BIT, headers })),
      );
      expect(both.map(({ status }) => status)).toEqual([201, 201]);
      expect(both[0]?.body).toEqual(both[1]?.body);
      const change = {
        body: { wings: 3 },
        headers: { "Idempotency-Key": `change-${round}`, "If-Match": '"1"' },
      };
      const url = `/v1/bits/${both[0]?.body.id}`;
      const changed = await Promise.all([one, other].map(({ ask }) => ask("PATCH", url, change)));
      expect(changed.map(({ status, body }) => [status, body.version])).toEqual([
        [200, 2],
        [200, 2],
      ]);
    }
    expect(await bits(one)).toHaveLength(8);
  });

  test("show at once what the other has written: records, policy, roles and keys", async () => {
    const [one, other] = await twoProcesses();
    const { body: key } = await one.ask("POST", "/v1/keys", { body: { name: "Tutor", role: "instructor" } });
    expect((await turn(other, "GET", "/v1/bits", key.key)).status).toBe(200);
    await one.ask("POST", `/v1/keys/${key.id}/revoke`);
    expect((await turn(other, "GET", "/v1/bits", key.key)).status).toBe(401);
    const headers = { "If-Match": String((await one.ask("GET", "/v1/shop-policy")).headers["etag"]) };
    const layer = { rimSpeedMaxMPerS: 40 };
    expect((await one.ask("PUT", "/v1/shop-policy", { body: { layer }, headers })).status).toBe(200);
    const { body } = await turn(other, "GET", "/v1/shop-policy", one.managerKey);
    expect(body.layer).toEqual(layer);
  });

  test("refuse a key that the other has revoked, whatever is written here between its last request and the next", async () => {
    const [one, other] = await twoProcesses();
    const { body: person } = await one.ask("POST", "/v1/people", {
      body: { name: "A tutor", role: "instructor" },
    });
    const { body: key } = await one.ask("POST", "/v1/keys", {
      body: { name: "Tablet", personId: person.id },
    });
    const asked = async () => (await turn(one, "POST", "/v1/bits", key.key, PANEL_BIT)).status;
    expect(await asked()).toBe(201);
    await one.ask("POST", "/v1/bits", { body: PANEL_BIT });
    const member = { body: { role: "member" }, headers: { "If-Match": "*" } };
    expect((await other.ask("PATCH", `/v1/people/${person.id}`, member)).status).toBe(200);
    await one.ask("POST", "/v1/bits", { body: PANEL_BIT });
    expect(await asked()).toBe(403);
    await one.ask("POST", "/v1/bits", { body: PANEL_BIT });
    await other.ask("POST", `/v1/keys/${key.id}/revoke`);
    await one.ask("POST", "/v1/bits", { body: PANEL_BIT });
    expect(await asked()).toBe(401);
  });

  test("let whoever follows one of them hear what both write, once and in order", async () => {
    const [one, other] = await twoProcesses();
    const address = await other.app.listen({ port: 0, host: "127.0.0.1" });
    const leaving = new AbortController();
    onTestFinished(() => leaving.abort());
    const response = await fetch(`${address}/v1/events/stream`, {
      headers: { authorization: `Bearer ${one.managerKey}` },
      signal: leaving.signal,
    });
    const heard: number[] = [];
    const listening = (async () => {
      const decoder = new TextDecoder();
      let text = "";
      const reader = response.body?.getReader();
      for (let part = await reader?.read(); part?.done === false; part = await reader?.read()) {
        text += decoder.decode(part.value, { stream: true });
        const whole = text.lastIndexOf("\n\n");
        for (const [, id] of text.slice(0, whole + 1).matchAll(/^id: (\d+)$/gm)) heard.push(Number(id));
        text = text.slice(whole + 1);
        if (heard.length >= 62) return;
      }
    })();
    await expect.poll(() => heard).toEqual([1, 2]);
    for (let count = 0; count < 20; count += 1) {
      await Promise.all([one, other, one].map(({ ask }) => ask("POST", "/v1/bits", { body: PANEL_BIT })));
    }
    await Promise.race([listening, wait(5000)]);
    expect(heard).toEqual(Array.from({ length: 62 }, (_, index) => index + 1));
  });

  test("do not import at the same time, and the other may when the first has ended", async () => {
    const [one, other] = await twoProcesses();
    const store = await openShopStore(one.file);
    onTestFinished(() => store.close());
    expect(await store.leases.take("import-running", 60_000)).toBe(true);
    for (const shop of [one, other]) {
      const refused = await sendFile(shop, straights(["First", "Second"]));
      expect([refused.status, refused.body.code]).toEqual([409, "import-running"]);
    }
    await store.leases.giveBack("import-running");
    expect((await sendFile(other, straights(["First", "Second"]))).status).toBe(200);
  });

  test("make one checkpoint when it is due for both", async () => {
    const [one, other] = await twoProcesses();
    const add = async (shop: Shop) => {
      for (let count = 0; count < 4; count += 1)
        await Promise.all(
          Array.from({ length: 125 }, () => shop.ask("POST", "/v1/bits", { body: PANEL_BIT })),
        );
    };
    await add(one);
    await add(other);
    const causes = async () =>
      (await one.ask("GET", "/v1/events/checkpoints")).body.data.map(({ cause }: { cause: string }) => cause);
    await expect.poll(causes, { timeout: 5000 }).toEqual(["events"]);
    await wait(500);
    expect(await causes()).toEqual(["events"]);
  });
});

describe("a lease", () => {
  test("is one process's until it is given back or ends, and the holder may hold it longer", async () => {
    const { file } = await openShop();
    const [one, other] = [await openShopStore(file), await openShopStore(file)];
    onTestFinished(async () => {
      await one.close();
      await other.close();
    });
    expect(await one.leases.take("job", 300)).toBe(true);
    expect(await other.leases.take("job", 300)).toBe(false);
    expect(await one.leases.take("job", 300)).toBe(true);
    await other.leases.giveBack("job");
    expect(await other.leases.take("job", 300), "nobody gives back what another holds").toBe(false);
    await expect.poll(() => other.leases.take("job", 300), { interval: 50 }).toBe(true);
    await other.leases.giveBack("job");
    expect(await one.leases.take("job", 300)).toBe(true);
  });
});

describe("a database that a newer program has migrated", () => {
  const migrated = ({ file }: Shop, name: string) =>
    behindTheService({ file }, ({ run }) =>
      run(`INSERT INTO migrations (name, sha256, applied_at) VALUES ('${name}', '', '')`),
    );

  test("is gone on with, unless the migration says that earlier programs cannot: then it says so, never with a 500", async () => {
    const shop = await openShop();
    await migrated(shop, "9998-more-columns.sql");
    expect((await shop.ask("GET", "/readyz", { key: null })).body.status).toBe("ready");
    expect((await shop.ask("POST", "/v1/bits", { body: PANEL_BIT })).status).toBe(201);
    await migrated(shop, "9999-columns-that-go-contract.sql");
    const { status, body } = await shop.ask("GET", "/readyz", { key: null });
    expect(status).toBe(503);
    expect(body).toMatchObject({ status: "not-ready", checks: { database: true, migrations: false } });
    expect(body.reason).toMatch(/9999-columns-that-go-contract\.sql.+Start the newer program here too\.$/);
    await expect(secondProcess(shop)).rejects.toThrow("The database is newer than this program");
  });
});

describeOnPostgresql("the rate limit of several processes", () => {
  test("counts what each of them was asked, within a second", async () => {
    const [one, other] = await twoProcesses({ RIMWISE_RATE_LIMIT_PER_MINUTE: "50" });
    for (let count = 0; count < 45; count += 1) expect((await one.ask("GET", "/v1/bits")).status).toBe(200);
    await expect
      .poll(async () => (await other.ask("GET", "/v1/bits")).status, { interval: 600, timeout: 8000 })
      .toBe(429);
    await expect.poll(async () => (await one.ask("GET", "/v1/bits")).status, { interval: 600 }).toBe(429);
  });
});

/** A request in a turn of its own, as it comes from elsewhere. */
async function turn({ ask }: Shop, method: "GET" | "POST", url: string, key: string, body?: object) {
  await wait(1);
  return ask(method, url, { key, ...(body && { body }) });
}
