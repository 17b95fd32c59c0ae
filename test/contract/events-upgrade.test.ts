import { createHash } from "node:crypto";
import { copyFileSync, mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { migrate } from "@rimwise/shop";
import Database from "better-sqlite3";
import { expect, onTestFinished, test } from "vitest";
import { describeOnSqlite } from "../../services/shop/testing/one-engine.ts";
import { openShop } from "./shop.ts";
import { sortedJson } from "./sorted-json.ts";

const MIGRATIONS = new URL("../../migrations/sqlite/", import.meta.url).pathname;
const BEFORE = ["0001-rack-keys-and-events.sql", "0002-shared-crib.sql"];

/** A database from before reasons were kept, with events at these hours, chained as they were then. */
function oldDatabase(hours: readonly number[]): string {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-old-"));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  const migrations = join(folder, "migrations");
  mkdirSync(migrations);
  for (const name of BEFORE) copyFileSync(join(MIGRATIONS, name), join(migrations, name));
  const file = join(folder, "shop.sqlite");
  const database = new Database(file);
  migrate(database, migrations, new Date("2025-11-03T08:00:00Z"));
  const insert = database.prepare(
    "INSERT INTO events VALUES (@sequence, @at, @by, @requestId, @type, @subjectId, @subjectVersion, @data, @previousHash, @hash)",
  );
  let previousHash = "0".repeat(64);
  for (const [index, hour] of hours.entries()) {
    const content = {
      sequence: index + 1,
      at: new Date(Date.UTC(2025, 10, 3, hour)).toISOString(),
      by: "system",
      requestId: "r-1",
      type: "bit.created",
      subjectId: `bit_${index}`,
      subjectVersion: 1,
      data: { after: { name: "Cove" } },
      previousHash,
    };
    previousHash = createHash("sha256").update(sortedJson(content)).digest("hex");
    insert.run({ ...content, data: JSON.stringify(content.data), hash: previousHash });
  }
  database.close();
  return file;
}

describeOnSqlite("histories from before reasons are in no other database", () => {
  test("a history from before reasons were kept stays whole, and is found by its times", async () => {
    const { ask } = await openShop({ RIMWISE_DATABASE: oldDatabase([8, 10, 9, 11]) });
    const reason = { "Change-Reason": "first since" };
    await ask("POST", "/v1/events/checkpoints", { headers: reason });
    const { body: proof } = await ask("POST", "/v1/events/verify", { body: {} });
    expect(proof).toMatchObject({ isIntact: true, checked: 7, checkpoints: 1 });
    const { body } = await ask("GET", "/v1/events?since=2025-11-03T09:00:00Z&until=2025-11-03T10:00:00Z");
    expect(body.data.map(({ sequence }: { sequence: number }) => sequence)).toEqual([3]);
  });
});
