import { mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { describeOnSqlite } from "../../services/shop/testing/one-engine.ts";
import { openShop, PANEL_BIT } from "./shop.ts";

const HOUR_MS = 60 * 60 * 1000;

/** A shop whose clock goes an hour further with every reading, with a folder for backups. */
async function shopWithFolder(settings: Record<string, string> = {}) {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-backups-"));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  let hours = 0;
  const now = () => {
    hours += 1;
    return new Date(Date.UTC(2026, 2, 2) + hours * HOUR_MS);
  };
  const shop = await openShop(
    { RIMWISE_BACKUP_FOLDER: folder, RIMWISE_BACKUP_EVERY_HOURS: "0", ...settings },
    now,
  );
  return { ...shop, folder };
}

describeOnSqlite("PostgreSQL has tools of its own for backups", () => {
  test("a backup is made in the folder of the settings, under a name of the service's own, and says what is in it", async () => {
    const { ask, folder } = await shopWithFolder();
    await ask("POST", "/v1/bits", { body: PANEL_BIT });
    const { status, body } = await ask("POST", "/v1/backups?file=/tmp/elsewhere", {
      body: { file: "/tmp/elsewhere", name: "../elsewhere" },
    });
    expect(status).toBe(201);
    expect(body).toMatchObject({
      format: 1,
      events: 3,
      records: { bit: 1, key: 1, "signing-key": 1 },
      head: { sequence: 3 },
    });
    expect(body.name).toMatch(/^rimwise-\d{8}T\d{9}Z\.sqlite$/);
    expect(readdirSync(folder)).toEqual([body.name]);
    const { mode, size } = statSync(join(folder, body.name));
    expect([mode & 0o777, size]).toEqual([0o600, body.sizeBytes]);
    expect((await ask("GET", "/v1/backups")).body.data).toEqual([body]);
    const proof = await ask("POST", "/v1/events/verify", { body: { head: body.head } });
    expect(proof.body.isIntact).toBe(true);
  });

  test("so many of the service's own backups stay, and nobody else's file is touched", async () => {
    const { ask, folder } = await shopWithFolder({ RIMWISE_BACKUP_KEEP: "2" });
    writeFileSync(join(folder, "aaa.sqlite"), "somebody's own");
    writeFileSync(join(folder, "rimwise-20260101T000000000Z.sqlite.partial"), "cut off");
    const names: string[] = [];
    for (let count = 0; count < 3; count += 1) names.push((await ask("POST", "/v1/backups")).body.name);
    expect(readdirSync(folder).sort()).toEqual(["aaa.sqlite", ...names.slice(1)]);
  });

  test("two at once are not made: the second is asked to wait", async () => {
    const { ask } = await shopWithFolder();
    const answers = await Promise.all([ask("POST", "/v1/backups"), ask("POST", "/v1/backups")]);
    expect(answers.map(({ status }) => status).sort()).toEqual([201, 409]);
    const refused = answers.find(({ status }) => status === 409);
    expect([refused?.body.code, refused?.headers["retry-after"]]).toEqual(["backup-running", "5"]);
  });

  test("the clock makes one when the newest is old enough", async () => {
    const { ask } = await shopWithFolder({ RIMWISE_BACKUP_EVERY_HOURS: "24" });
    await expect.poll(async () => (await ask("GET", "/v1/backups")).body.data.length).toBe(1);
  });

  test("without a folder in the settings none is made, and a folder that is gone is no 201", async () => {
    const none = await openShop();
    for (const method of ["GET", "POST"] as const) {
      const { status, body } = await none.ask(method, "/v1/backups");
      expect([status, body.code]).toEqual([409, "backup-folder-missing"]);
    }
    const { ask, folder } = await shopWithFolder();
    rmSync(folder, { recursive: true });
    expect((await ask("POST", "/v1/backups")).status).toBe(500);
    writeFileSync(folder, "");
  });
});
