import { buildApp, grantFirstKey, readConfig } from "@rimwise/shop";
import { expect, onTestFinished, test } from "vitest";
import { openInMemoryStore } from "../../services/shop/testing/in-memory-store.ts";
import { describeOnSqlite } from "../../services/shop/testing/one-engine.ts";
import { CSV, manyStraights } from "./import-files.ts";
import { PANEL_BIT } from "./shop.ts";

/** A shop in memory, whose file can be made full or read-only, and a way to add a bit to it. */
async function shopOnAFile() {
  const { store, sqlite } = openInMemoryStore();
  const key = await grantFirstKey(store, undefined);
  const config = readConfig({
    RIMWISE_DATABASE: ":memory:",
    RIMWISE_LOG_LEVEL: "silent",
    RIMWISE_BUSY_AFTER_MS: "0",
  });
  const { app } = await buildApp({ config, store });
  onTestFinished(async () => void (await app.close()));
  const add = () =>
    app.inject({
      method: "POST",
      url: "/v1/bits",
      headers: { authorization: `Bearer ${key}` },
      payload: { ...PANEL_BIT, notes: "long ".repeat(300) },
    });
  const importFile = (rows: number, mode: string) =>
    app.inject({
      method: "POST",
      url: `/v1/bits/import?mode=${mode}`,
      headers: { authorization: `Bearer ${key}`, "content-type": CSV },
      payload: manyStraights(rows),
    });
  return { sqlite, add, importFile };
}

describeOnSqlite("its disk is this machine's, and its file can be made full", () => {
  test("a full disk is said to be full, nothing is changed, and work goes on when there is room", async () => {
    const { sqlite, add } = await shopOnAFile();
    expect((await add()).statusCode).toBe(201);
    const pages = Number(sqlite.pragma("page_count", { simple: true }));
    sqlite.pragma(`max_page_count = ${pages}`);
    let last = await add();
    for (let count = 0; count < 20 && last.statusCode === 201; count += 1) last = await add();
    expect(last.statusCode).toBe(507);
    expect(last.headers["content-type"]).toMatch(/^application\/problem\+json/);
    expect(last.json()).toMatchObject({ code: "disk-full", title: "The disk is full." });
    const bits = () => sqlite.prepare("SELECT count(*) FROM bits").pluck().get();
    const before = bits();
    expect((await add()).statusCode).toBe(507);
    expect(bits()).toBe(before);
    sqlite.pragma(`max_page_count = ${pages * 10}`);
    expect((await add()).statusCode).toBe(201);
  });

  test.each([
    ["row-by-row", /^The import import_\S+ was cut off\. The rows that were taken until then are kept/],
    ["all-or-nothing", /^Nothing was changed\./],
  ])("a disk that is full amid an import %s is said with what is true of it", async (mode, detail) => {
    const { sqlite, importFile } = await shopOnAFile();
    sqlite.pragma(`max_page_count = ${Number(sqlite.pragma("page_count", { simple: true })) + 200}`);
    const refused = await importFile(1000, mode);
    expect([refused.statusCode, refused.json().code]).toEqual([507, "disk-full"]);
    expect(refused.json().detail).toMatch(detail);
    const bits = Number(sqlite.prepare("SELECT count(*) FROM bits").pluck().get());
    expect(bits > 0 && bits < 1000).toBe(mode === "row-by-row");
  });

  test("a database that may not be written is said to be read-only, and nothing is changed", async () => {
    const { sqlite, add } = await shopOnAFile();
    sqlite.pragma("query_only = ON");
    const refused = await add();
    expect(refused.statusCode).toBe(503);
    expect(refused.json()).toMatchObject({ code: "database-read-only" });
    sqlite.pragma("query_only = OFF");
    expect((await add()).statusCode).toBe(201);
  });
});
