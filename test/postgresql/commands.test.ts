import { execFileSync } from "node:child_process";
import { randomUUID } from "node:crypto";
import { join } from "node:path";
import { beforeAll, expect, onTestFinished, test } from "vitest";
import { freeSchema, newSchema } from "../../services/shop/testing/database-under-test.ts";
import { describeOnPostgresql } from "../../services/shop/testing/one-engine.ts";
import { openShop, PANEL_BIT } from "../contract/shop.ts";
import { builtService } from "../running/built-service.ts";
import { ask, ran, start, temporaryFolder } from "../running/service-process.ts";
import { programOf } from "./server.ts";

const FIRST_KEY = "a-first-manager's-key-for-the-tests-0123456789";

describeOnPostgresql("on PostgreSQL, the commands", (server) => {
  let service: readonly string[];
  beforeAll(async () => {
    service = [await builtService()];
  });

  /** A running shop with a history and a checkpoint. */
  async function runningShop() {
    const database = newSchema(server);
    onTestFinished(() => freeSchema(database));
    const folder = temporaryFolder();
    const settings = {
      RIMWISE_DATABASE: database,
      RIMWISE_SEALING_KEY: "5e".repeat(32),
      RIMWISE_SIGNING_KEYS: join(folder, "signing-keys.json"),
      RIMWISE_FIRST_KEY: FIRST_KEY,
    };
    const shop = await start(service, database, settings);
    for (let count = 0; count < 5; count += 1) await ask(shop, "/v1/bits", PANEL_BIT);
    expect((await ask(shop, "/v1/events/checkpoints", {})).status).toBe(201);
    const command = (words: string[], other: Record<string, string> = {}) =>
      ran([...service, ...words], { ...settings, ...other });
    return { shop, database, folder, command };
  }

  test("verify the history and make a manager's key while the service runs", async () => {
    const { shop, command } = await runningShop();
    const proof = await command(["verify"]);
    expect([proof.code, proof.err]).toEqual([0, ""]);
    expect(JSON.parse(proof.out)).toMatchObject({ isIntact: true, checkpoints: 1 });
    const { code, out } = await command(["new-manager-key", "Spare"]);
    expect(code).toBe(0);
    const { body } = await ask({ url: shop.url, key: out.trim() }, "/v1/me");
    expect(body).toMatchObject({ role: "manager" });
  });

  test("leave copying and replacing to PostgreSQL's own tools, and say which", async () => {
    const { folder, command } = await runningShop();
    const file = join(folder, "shop.backup");
    for (const [words, tool] of [
      [["backup", file], "pg_dump"],
      [["restore", file], "pg_restore"],
    ] as const) {
      const refused = await command([...words]);
      expect([refused.code, refused.out]).toEqual([1, ""]);
      expect(refused.err).toMatch(
        new RegExp(`^RIMWISE_DATABASE: postgresql://.+ is no file\\. Use ${tool}, .+\\n$`),
      );
    }
    const { code, err } = await command(["serve"], { RIMWISE_BACKUP_FOLDER: folder });
    expect([code, err]).toEqual([1, expect.stringMatching(/^RIMWISE_BACKUP_FOLDER: .+pg_dump/)]);
  });

  test("find no shop where there is none, and make none", async () => {
    const { command } = await runningShop();
    const nothing = newSchema(server).replace(/schema=\w+/, "schema=shop_that_is_not_there");
    const refused = await command(["verify"], { RIMWISE_DATABASE: nothing });
    expect([refused.code, refused.err]).toEqual([
      1,
      expect.stringMatching(/There is no shop in the schema shop_/),
    ]);
    expect((await command(["verify"], { RIMWISE_DATABASE: nothing })).err).toBe(refused.err);
  });

  test("find a dump by pg_dump whole once pg_restore has put it into another database", async () => {
    const { shop, database, folder, command } = await runningShop();
    const url = new URL(database);
    const schema = url.searchParams.get("schema") ?? "";
    for (const name of ["schema", "pool_size"]) url.searchParams.delete(name);
    const dump = join(folder, "shop.dump");
    execFileSync(programOf("pg_dump"), [
      "--format=custom",
      `--file=${dump}`,
      `--schema=${schema}`,
      String(url),
    ]);
    const latest = async () => {
      const { body } = await ask(shop, "/v1/events?limit=200");
      return body.data.at(-1);
    };
    const { sequence, hash } = await latest();
    const name = `restored_${randomUUID().replaceAll("-", "")}`;
    const options = [`--host=${url.searchParams.get("host")}`, `--username=${url.username}`];
    execFileSync(programOf("createdb"), [...options, "--template=template0", "--locale=C", name]);
    onTestFinished(() => void execFileSync(programOf("dropdb"), [...options, "--force", name]));
    const elsewhere = new URL(database);
    elsewhere.pathname = `/${name}`;
    url.pathname = `/${name}`;
    execFileSync(programOf("pg_restore"), [`--dbname=${url}`, "--exit-on-error", dump]);
    const proof = await command(["verify", "--head", `${sequence}:${hash}`], {
      RIMWISE_DATABASE: String(elsewhere),
    });
    expect([proof.code, proof.err]).toEqual([0, ""]);
    expect(JSON.parse(proof.out)).toMatchObject({ isIntact: true, lastSequence: sequence, checkpoints: 1 });
    const other = await command(["verify", "--head", `${sequence + 1}:${hash}`], {
      RIMWISE_DATABASE: String(elsewhere),
    });
    expect(other.code, "what came after the dump is not in it").toBe(1);
    const again = await start(service, String(elsewhere), {
      RIMWISE_SEALING_KEY: "5e".repeat(32),
      RIMWISE_SIGNING_KEYS: join(folder, "other.json"),
      RIMWISE_FIRST_KEY: FIRST_KEY,
    });
    expect((await ask(again, "/v1/bits")).body.data).toHaveLength(5);
    expect((await ask(again, "/v1/bits", PANEL_BIT)).status, "numbers go on where they were").toBe(201);
  });

  test("are what makes backups: over HTTP the service says so", async () => {
    const { ask: asking } = await openShop();
    for (const method of ["GET", "POST"] as const) {
      const { status, body } = await asking(method, "/v1/backups");
      expect([status, body.code]).toEqual([409, "backup-elsewhere"]);
    }
  });
});
