import { chmodSync, existsSync } from "node:fs";
import { setImmediate as nextTurn } from "node:timers/promises";
import { describe, expect, test } from "vitest";
import { behindTheService } from "../../services/shop/testing/behind-the-service.ts";
import { keptKeys, keyFile, PUBLISHED } from "./key-file.ts";
import { openShop } from "./shop.ts";

const good = { ...PUBLISHED, createdAt: "2026-03-02T08:00:00.000Z" };

describe("the signing keys", () => {
  /** A shop that has signed a checkpoint with each of two keys, and how it is started again with other files. */
  async function signedTwice() {
    const file = keyFile();
    const shop = await openShop({ RIMWISE_SIGNING_KEYS: file });
    await shop.ask("POST", "/v1/events/checkpoints");
    await shop.ask("POST", "/v1/signing-keys/rotate");
    const again = (settings: Record<string, string>) =>
      openShop({ RIMWISE_DATABASE: shop.file, RIMWISE_FIRST_KEY: shop.managerKey, ...settings });
    return { shop, file, again };
  }

  test("that are gone from a shop that has signed stop its start, unless a setting takes them as lost", async () => {
    const { file, again } = await signedTwice();
    const gone = keyFile();
    const start = again({ RIMWISE_SIGNING_KEYS: gone });
    await expect(start).rejects.toThrow(`RIMWISE_SIGNING_KEYS: ${gone} is not there`);
    expect(existsSync(gone), "no new key is made").toBe(false);
    expect((await again({ RIMWISE_SIGNING_KEYS: file })).app.server).toBeDefined();
    const lost = await again({ RIMWISE_SIGNING_KEYS: gone, RIMWISE_ACCEPT_LOST_SIGNING_KEYS: "yes" });
    expect(lost.log()).toContain(`${gone} is not there`);
    expect(existsSync(gone)).toBe(true);
  });

  test("of which the earlier are missing stop the start, and are named", async () => {
    const { shop, file, again } = await signedTwice();
    const [first] = await keptKeys(shop);
    await behindTheService(shop, ({ run }) => run("DELETE FROM signing_keys WHERE retired_at IS NOT NULL"));
    const start = again({ RIMWISE_SIGNING_KEYS: file });
    await expect(start).rejects.toThrow(
      `the database lacks keys that this shop has signed with: ${first?.kid}`,
    );
  });

  test("that were sealed with another key stop the start, and taken as lost they are no more believed", async () => {
    const { shop, again } = await signedTwice();
    const other = keyFile({ sealingKey: "ab".repeat(32) });
    const start = again({ RIMWISE_SIGNING_KEYS: other });
    await expect(start).rejects.toThrow(/^RIMWISE_SIGNING_KEYS: .+ sealed with another key than the one in /);
    const settings = { RIMWISE_SIGNING_KEYS: other, RIMWISE_ACCEPT_LOST_SIGNING_KEYS: "yes" };
    const lost = await again(settings);
    const kids = (await keptKeys(shop)).map(({ kid }) => kid);
    expect(kids).toHaveLength(3);
    expect(lost.log()).toContain(`what they signed cannot be checked any more: ${kids[0]}, ${kids[1]}`);
    const { body } = await lost.ask("GET", "/v1/signing-keys");
    expect(body.data).toMatchObject([{ id: kids[2], isCurrent: true }]);
    expect((await lost.ask("POST", "/v1/events/verify", { body: {} })).body.broken).toMatchObject({
      reason: "checkpoint-key-unknown",
    });
    const { body: events } = await lost.ask("GET", "/v1/events?type=signing-key.lost");
    expect(events.data).toMatchObject([{ by: "system" }, { by: "system" }]);
    await again({ RIMWISE_SIGNING_KEYS: other });
  });

  test("that somebody put into the database, or changed there, without what seals them are believed by nobody", async () => {
    const { shop, file, again } = await signedTwice();
    const published = async () => {
      // As a request from elsewhere comes: in a turn of its own.
      await nextTurn();
      return (await shop.ask("GET", "/.well-known/jwks.json", { key: null })).body.keys;
    };
    const before = await published();
    await behindTheService(shop, ({ run }) =>
      run(
        `INSERT INTO signing_keys (id, version, created_at, updated_at, kid, x, seal, retired_at)
         SELECT 'signingkey_planted', 1, created_at, created_at, '${PUBLISHED.kid}', '${PUBLISHED.x}', seal, retired_at
         FROM signing_keys WHERE retired_at IS NOT NULL`,
      ),
    );
    expect(await published()).toEqual(before);
    await expect(again({ RIMWISE_SIGNING_KEYS: file })).rejects.toThrow("sealed with another key");
    await behindTheService(shop, ({ run }) =>
      run(
        `DELETE FROM signing_keys WHERE id = 'signingkey_planted'; UPDATE signing_keys SET x = '${PUBLISHED.x}' WHERE retired_at IS NOT NULL`,
      ),
    );
    expect(await published()).toEqual(before.slice(1));
  });

  test("of a shop that may have handed out sheets stop the start when they are gone, checkpoint or not", async () => {
    const shop = await openShop();
    await behindTheService(shop, async ({ columns, run }) => {
      const names = (await columns("approvals"))
        .filter(({ isRequired, name }) => isRequired || name === "issued_at")
        .map(({ name }) => name);
      const value: Record<string, string> = { state: "'issued'", version: "1", is_two_person: "FALSE" };
      const values = names.map((name) => value[name] ?? "'{}'");
      await run(`INSERT INTO approvals (${names}) VALUES (${values})`);
    });
    const settings = { RIMWISE_DATABASE: shop.file, RIMWISE_FIRST_KEY: shop.managerKey };
    await expect(openShop({ ...settings, RIMWISE_SIGNING_KEYS: keyFile() })).rejects.toThrow("is not there");
  });

  test.each([0o644, 0o640, 0o604, 0o620])(
    "that others may read (%o) stop the start with what to do",
    async (mode) => {
      const file = keyFile({ keys: [good] });
      chmodSync(file, mode);
      const start = openShop({ RIMWISE_SIGNING_KEYS: file });
      await expect(start).rejects.toThrow(/^RIMWISE_SIGNING_KEYS: others .+chmod 600.+rotate\.$/);
      await expect(start).rejects.not.toThrow(PUBLISHED.d);
      chmodSync(file, 0o600);
      await openShop({ RIMWISE_SIGNING_KEYS: file });
    },
  );
});
