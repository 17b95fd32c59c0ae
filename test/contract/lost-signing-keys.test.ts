import { chmodSync, existsSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { behindTheService } from "../../services/shop/testing/behind-the-service.ts";
import { keyFile, PUBLISHED } from "./key-file.ts";
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
    return { file, keys: JSON.parse(readFileSync(file, "utf8")).keys, again };
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
    const { keys, again } = await signedTwice();
    const start = again({ RIMWISE_SIGNING_KEYS: keyFile({ keys: keys.slice(1) }) });
    await expect(start).rejects.toThrow(`lacks keys that this shop has signed with: ${keys[0].kid}`);
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
