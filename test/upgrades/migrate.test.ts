import { closeSync, mkdtempSync, openSync, readdirSync, rmSync, writeFileSync, writeSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { migrate, openShopStore } from "@rimwise/shop";
import Database from "better-sqlite3";
import { describe, expect, onTestFinished, test } from "vitest";

const NOW = new Date("2026-03-02T08:00:00Z");
const LATER = new Date("2026-03-02T08:00:01Z");
const REAL_MIGRATIONS = new URL("../../migrations/sqlite/", import.meta.url).pathname;

function workshop(files: Record<string, string>) {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-migrations-"));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  const write = (name: string, sql: string) => writeFileSync(join(folder, name), sql);
  for (const [name, sql] of Object.entries(files)) write(name, sql);
  const file = join(folder, "shop.sqlite");
  const open = () => {
    const database = new Database(file);
    onTestFinished(() => void database.close());
    database.pragma("foreign_keys = ON");
    return database;
  };
  return { folder, write, file, open };
}

const PARENTS = {
  "0001-parents.sql": `
    CREATE TABLE racks (id TEXT PRIMARY KEY) STRICT;
    CREATE TABLE slots (id TEXT PRIMARY KEY, rack_id TEXT NOT NULL REFERENCES racks (id) ON DELETE CASCADE) STRICT;
    INSERT INTO racks VALUES ('r1');
    INSERT INTO slots VALUES ('s1', 'r1'), ('s2', 'r1');`,
};

describe("the migration runner", () => {
  test("applies what is missing, in order, once", () => {
    const { folder, write, open } = workshop(PARENTS);
    const database = open();
    expect(migrate(database, folder, NOW)).toEqual({ applied: ["0001-parents.sql"], copy: undefined });
    expect(migrate(database, folder, NOW).applied).toEqual([]);
    write("0003-third.sql", "ALTER TABLE racks ADD COLUMN third TEXT;");
    write("0002-second.sql", "ALTER TABLE racks ADD COLUMN second TEXT;");
    write("notes.txt", "no migration");
    expect(migrate(database, folder, NOW).applied).toEqual(["0002-second.sql", "0003-third.sql"]);
  });

  test("copies a database that holds data before it touches it", () => {
    const { folder, write, open } = workshop(PARENTS);
    migrate(open(), folder, NOW);
    write("0002-drop.sql", "DROP TABLE slots;");
    const { copy } = migrate(open(), folder, NOW);
    const before = new Database(String(copy), { readonly: true });
    expect(before.prepare("SELECT id FROM slots ORDER BY id").pluck().all()).toEqual(["s1", "s2"]);
    before.close();
  });

  test("rebuilds a table without its children being deleted along", () => {
    const { folder, write, open } = workshop(PARENTS);
    const database = open();
    migrate(database, folder, NOW);
    write(
      "0002-rebuild.sql",
      `CREATE TABLE racks_new (id TEXT PRIMARY KEY, place TEXT) STRICT;
       INSERT INTO racks_new (id) SELECT id FROM racks;
       DROP TABLE racks;
       ALTER TABLE racks_new RENAME TO racks;`,
    );
    migrate(database, folder, NOW);
    expect(database.prepare("SELECT count(*) FROM slots").pluck().get()).toBe(2);
    expect(database.pragma("foreign_keys", { simple: true })).toBe(1);
  });

  test("leaves everything as it was when one file fails or leaves rows that point nowhere", () => {
    const { folder, write, open } = workshop(PARENTS);
    const database = open();
    migrate(database, folder, NOW);
    const tables = () => database.prepare("SELECT name FROM sqlite_master ORDER BY name").pluck().all();
    const before = tables();
    write("0002-good.sql", "CREATE TABLE places (id TEXT PRIMARY KEY) STRICT;");
    write("0003-bad.sql", "CREATE TABLE broken (;");
    expect(() => migrate(database, folder, NOW)).toThrow(/syntax error/);
    expect(tables()).toEqual(before);
    write("0003-bad.sql", "DELETE FROM racks;");
    expect(() => migrate(database, folder, LATER)).toThrow(/point nowhere/);
    expect(tables()).toEqual(before);
    expect(database.prepare("SELECT count(*) FROM racks").pluck().get()).toBe(1);
    expect(database.pragma("foreign_keys", { simple: true })).toBe(1);
  });

  test("refuses a file that was edited after it was applied, and a database newer than the program", () => {
    const { folder, write, open } = workshop(PARENTS);
    migrate(open(), folder, NOW);
    write("0001-parents.sql", `${PARENTS["0001-parents.sql"]}\n-- edited`);
    expect(() => migrate(open(), folder, NOW)).toThrow(/0001-parents.sql was edited/);
    const other = workshop({
      "0001-parents.sql": PARENTS["0001-parents.sql"],
      "0002-later.sql": "SELECT 1;",
    });
    const database = other.open();
    migrate(database, other.folder, NOW);
    rmSync(join(other.folder, "0002-later.sql"));
    expect(() => migrate(database, other.folder, NOW)).toThrow(/newer than this program/);
  });
});

describe("the migrations of this project", () => {
  test("are numbered in order, none twice", () => {
    const numbers = readdirSync(REAL_MIGRATIONS)
      .filter((name) => name.endsWith(".sql"))
      .sort()
      .map((name) => Number(name.slice(0, 4)));
    expect([...new Set(numbers)].sort((one, other) => one - other)).toEqual(numbers);
    expect(numbers[0]).toBe(1);
  });
});

describe("opening a shop's database", () => {
  test.each([
    ["first page", 0],
    ["third page", 2],
  ])("refuses a file whose %s is damaged", async (_name, page) => {
    const { file } = workshop({});
    await (await openShopStore(file)).close();
    const database = new Database(file);
    const pageSize = Number(database.pragma("page_size", { simple: true }));
    database.close();
    const handle = openSync(file, "r+");
    writeSync(handle, Buffer.alloc(pageSize, 0xff), 0, pageSize, page * pageSize);
    closeSync(handle);
    await expect(openShopStore(file)).rejects.toThrow(/not a database|is damaged|malformed/);
  });

  test("brings a new file to the newest level and is ready", async () => {
    const { file } = workshop({});
    const store = await openShopStore(file);
    expect(await store.health()).toEqual({ database: true, migrations: true, disk: true, writable: true });
    await store.close();
  });
});
