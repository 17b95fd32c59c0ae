import { existsSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import Database from "better-sqlite3";
import { beforeAll, describe, expect, test } from "vitest";
import { builtService } from "./built-service.ts";
import {
  ask,
  exited,
  freePort,
  ran,
  type Settings,
  start,
  temporaryFile,
  temporaryFolder,
} from "./service-process.ts";

let service: readonly string[];
beforeAll(async () => {
  service = [await builtService()];
});

describe("a start that cannot succeed ends with 1 and one sentence that names the setting", () => {
  const database = (make: (folder: string) => string) => () => ({
    RIMWISE_DATABASE: make(temporaryFolder()),
  });
  const cases: [string, () => Settings | Promise<Settings>, RegExp][] = [
    [
      "a port that is taken",
      async () => ({ RIMWISE_DATABASE: temporaryFile(), RIMWISE_PORT: (await takenPort()).port }),
      /^RIMWISE_PORT: port \d+ of 127\.0\.0\.1 is taken .+\n$/,
    ],
    [
      "an address that is not this machine's",
      () => ({ RIMWISE_DATABASE: temporaryFile(), RIMWISE_HOST: "203.0.113.7" }),
      /^RIMWISE_HOST: this machine has no address 203\.0\.113\.7\. .+\n$/,
    ],
    [
      "a host without an address",
      () => ({ RIMWISE_DATABASE: temporaryFile(), RIMWISE_HOST: "nowhere.invalid" }),
      /^RIMWISE_HOST: this machine has no address nowhere\.invalid\. .+\n$/,
    ],
    [
      "a folder that is missing",
      database((folder) => join(folder, "missing/shop.sqlite")),
      /^RIMWISE_DATABASE: the folder of .+ is not there\. .+\n$/,
    ],
    [
      "a folder in place of a file",
      database((folder) => folder),
      /^RIMWISE_DATABASE: .+ cannot be opened .+\n$/,
    ],
    [
      "a file that is no database",
      database((folder) => written(join(folder, "notes.txt"), "word ".repeat(3000))),
      /^RIMWISE_DATABASE: .+ is not a database\. .+\n$/,
    ],
    [
      "another program's database",
      database((folder) => changed(join(folder, "other.sqlite"), "CREATE TABLE songs (name TEXT)")),
      /^RIMWISE_DATABASE: .+not this service's own\. .+\n$/,
    ],
    [
      "a database of a newer version",
      async () => {
        const file = temporaryFile();
        const shop = await start(service, file);
        shop.process.kill("SIGTERM");
        await exited(shop);
        return {
          RIMWISE_DATABASE: changed(file, "INSERT INTO migrations VALUES ('9999-later.sql', '', '')"),
        };
      },
      /^RIMWISE_DATABASE: .+newer than this program.+9999-later\.sql\. .+\n$/,
    ],
    [
      "a folder for backups that is missing",
      () => ({ RIMWISE_DATABASE: temporaryFile(), RIMWISE_BACKUP_FOLDER: "/nowhere/at/all" }),
      /^RIMWISE_BACKUP_FOLDER: \/nowhere\/at\/all is not a folder .+\n$/,
    ],
    [
      "a database in memory, and no terminal for its key",
      () => ({ RIMWISE_DATABASE: ":memory:" }),
      /^RIMWISE_FIRST_KEY: .+\n$/,
    ],
  ];

  test.each(cases)("%s", async (_what, settings, sentence) => {
    const { code, out, err } = await ran(service, { RIMWISE_PORT: "0", ...(await settings()) });
    expect([code, err]).toEqual([1, expect.stringMatching(sentence)]);
    expect(out).not.toContain("rw_");
  });

  test("wrong settings, each with a sentence of its own", async () => {
    const { code, err } = await ran(service, { RIMWISE_PORT: "none", RIMWISE_LOG_LEVEL: "loud" });
    expect(code).toBe(1);
    expect(err).toMatch(/RIMWISE_PORT: .+ 0 to 65535/);
    expect(err).toMatch(/RIMWISE_LOG_LEVEL: .+ fatal, error/);
    expect(err).not.toMatch(/\bat .+\.[jt]s/);
  });

  test("a start that failed hands over no key: the next one does", async () => {
    const { port, release } = await takenPort();
    const file = temporaryFile();
    expect((await ran(service, { RIMWISE_DATABASE: file, RIMWISE_PORT: port })).code).toBe(1);
    expect(existsSync(`${file}.first-key`)).toBe(false);
    release();
    const shop = await start(service, file);
    expect((await ask(shop, "/v1/me")).status).toBe(200);
  });
});

/** A port that somebody listens on. */
async function takenPort(): Promise<{ port: string; release: () => void }> {
  const port = await freePort();
  const server = createServer().listen(port, "127.0.0.1").unref();
  return { port: String(port), release: () => void server.close() };
}

function written(file: string, text: string): string {
  writeFileSync(file, text);
  return file;
}

function changed(file: string, sql: string): string {
  const database = new Database(file);
  database.exec(sql);
  database.close();
  return file;
}
