import { createHash } from "node:crypto";
import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { migrate } from "@rimwise/shop";
import Database from "better-sqlite3";
import { expect, onTestFinished, test } from "vitest";
import { openShop, PANEL_BIT, TABLE_ROUTER } from "../contract/shop.ts";
import { sortedJson } from "../contract/sorted-json.ts";

const FIRST = "0001-rack-keys-and-events.sql";
const PASSPHRASE = "the-old-shops-own-passphrase";
const AT = "2026-03-02T08:00:00.000Z";
const KEPT = { version: 1, createdAt: AT, updatedAt: AT };

const sha256 = (text: string) => createHash("sha256").update(text).digest("hex");

/** A database as the first release left it: a key, a bit, a router with readings, and one event. */
function firstReleaseFile(): string {
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
  database
    .prepare(
      "INSERT INTO bits VALUES ('bit_1', 1, @at, @at, @name, NULL, @form, 12.7, 2, 340, NULL, NULL, 12000)",
    )
    .run({ at: AT, name: PANEL_BIT.name, form: JSON.stringify(form) });
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

test("what the first release kept is all there, is found, is planned with, and its history is whole", async () => {
  const shop = await openShop(
    {
      RIMWISE_DATABASE: firstReleaseFile(),
      RIMWISE_FIRST_KEY: "a-first-key-that-no-new-shop-needs",
      RIMWISE_SIGNING_KEYS: ":memory:",
    },
    () => new Date("2026-04-01T08:00:00Z"),
  );
  // Shorter than one may be chosen now; it opens the shop as before.
  const ask: typeof shop.ask = (method, url, rest) => shop.ask(method, url, { key: PASSPHRASE, ...rest });
  const { body: bit } = await ask("GET", "/v1/bits/bit_1");
  expect(bit).toMatchObject({
    ...KEPT,
    name: PANEL_BIT.name,
    form: PANEL_BIT.form,
    massG: 340,
    state: "in-rack",
  });
  const { body: found } = await ask("GET", `/v1/bits?q=${encodeURIComponent("3 1/2 panel")}`);
  expect(found.data.map(({ id }: { id: string }) => id)).toEqual(["bit_1"]);
  const plan = await ask("POST", "/v1/plans/preview", {
    body: {
      bit: { id: "bit_1" },
      router: { id: "router_1" },
      mounting: "table",
      woodId: "black-cherry",
      cut: { kind: "panel", thicknessMm: 19, edges: [{ lengthMm: 310, grain: "end" }] },
    },
  });
  expect(plan.body.verdict).toBe("run-with-care");
  const { body: proof } = await ask("POST", "/v1/events/verify", { body: {} });
  expect(proof).toMatchObject({ isIntact: true, checked: 1 });
  const { body: keys } = await ask("GET", "/v1/keys");
  expect(keys.data).toMatchObject([{ role: "manager", name: "First manager" }]);
});
