import { createHash } from "node:crypto";
import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { migrate } from "@rimwise/shop";
import Database from "better-sqlite3";
import { onTestFinished } from "vitest";
import { PANEL_BIT, TABLE_ROUTER } from "../contract/shop.ts";
import { sortedJson } from "../contract/sorted-json.ts";

const FIRST = "0001-rack-keys-and-events.sql";
/** What opens it. */
export const PASSPHRASE = "the-old-shops-own-passphrase";
const AT = "2026-03-02T08:00:00.000Z";
/** What every record says of its history. */
export const KEPT = { version: 1, createdAt: AT, updatedAt: AT };

const sha256 = (text: string) => createHash("sha256").update(text).digest("hex");

/** A database as the first release left it: a key, bits, a router with readings, and one event. */
export function firstReleaseFile(bits = 1): string {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-first-"));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  copyFileSync(new URL(`../../migrations/sqlite/${FIRST}`, import.meta.url), join(folder, FIRST));
  const file = join(folder, "shop.sqlite");
  const database = new Database(file);
  migrate(database, folder, new Date(AT));
  const { form, dial, ...rest } = { ...PANEL_BIT, ...TABLE_ROUTER };
  database
    .prepare(
      "INSERT INTO keys VALUES ('key_00000000000000000000000000000001', 1, @at, @at, 'First manager', 'manager', @digest, NULL)",
    )
    .run({ at: AT, digest: sha256(PASSPHRASE) });
  const addBit = database.prepare(
    "INSERT INTO bits VALUES (@id, 1, @at, @at, @name, NULL, @form, 12.7, 2, 340, NULL, NULL, 12000)",
  );
  database.transaction(() => {
    for (let number = 1; number <= bits; number += 1)
      addBit.run({ id: `bit_${number}`, at: AT, name: PANEL_BIT.name, form: JSON.stringify(form) });
  })();
  database
    .prepare(
      "INSERT INTO routers VALUES ('router_1', 1, @at, @at, 'Table router', NULL, @minRpm, @maxRpm, @dial, 2200, '[6.35,12.7]')",
    )
    .run({ at: AT, dial: JSON.stringify(dial), minRpm: rest.minRpm, maxRpm: rest.maxRpm });
  const event = {
    sequence: 1,
    at: AT,
    by: "system",
    requestId: "start",
    type: "bit.created",
    subjectId: "bit_1",
    subjectVersion: 1,
    data: { after: { id: "bit_1" } },
    previousHash: "0".repeat(64),
  };
  database
    .prepare(
      "INSERT INTO events VALUES (1, @at, @by, @requestId, @type, @subjectId, 1, @data, @previousHash, @hash)",
    )
    .run({ ...event, data: JSON.stringify(event.data), hash: sha256(sortedJson(event)) });
  database.close();
  return file;
}
