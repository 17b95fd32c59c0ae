import { execFileSync } from "node:child_process";
import { chmodSync, readdirSync, renameSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { builtService } from "./built-service.ts";
import { ask, exited, FROM_SOURCE, ran, start, temporaryFile } from "./service-process.ts";

let service: readonly string[];
beforeAll(async () => {
  service = [await builtService()];
});

test("what the service keeps is its owner's alone to read, whatever others may read by default", async () => {
  const file = temporaryFile();
  writeFileSync(file, "");
  chmodSync(file, 0o644);
  const folder = dirname(file);
  const shop = await start(service, file, { RIMWISE_BACKUP_FOLDER: folder });
  await expect
    .poll(async () => (await ask(shop, "/v1/backups")).body.data.length, { timeout: 20_000 })
    .toBe(1);
  for (const suffix of ["", "-wal", "-shm", ".signing-keys.json", ".first-key"])
    expect([suffix, statSync(`${file}${suffix}`).mode & 0o777]).toEqual([suffix, 0o600]);
  const files = readdirSync(folder).filter((name) => statSync(join(folder, name)).isFile());
  expect(files.length).toBeGreaterThan(5);
  for (const name of files) expect([name, statSync(join(folder, name)).mode & 0o077]).toEqual([name, 0]);
  shop.process.kill("SIGTERM");
  await exited(shop);
});

test("a file that becomes read-only or goes away makes the service not ready", async () => {
  const file = temporaryFile();
  const shop = await start(service, file);
  const checks = async () => (await ask(shop, "/readyz")).body.checks;
  chmodSync(file, 0o444);
  expect(await checks()).toMatchObject({ writable: false, database: true });
  chmodSync(file, 0o600);
  expect(await checks()).toMatchObject({ writable: true });
  renameSync(file, `${file}.gone`);
  expect(await checks()).toMatchObject({ writable: false });
});

describe("SIGTERM ends the service with 0", () => {
  test("as it is built", async () => {
    const shop = await start(service, temporaryFile());
    shop.process.kill("SIGTERM");
    expect(await exited(shop)).toBe(0);
  });

  test("as it is started from its sources, also through the package manager", async () => {
    const own = await start(FROM_SOURCE, temporaryFile());
    own.process.kill("SIGTERM");
    expect(await exited(own)).toBe(0);
    const managed = await start([packageManager(), "start"], temporaryFile());
    managed.process.kill("SIGTERM");
    expect(await exited(managed)).toBe(0);
    expect(await fetch(managed.url).catch(() => "gone")).toBe("gone");
  });
});

test("labels that would lead to nowhere but this machine are warned of at the start", async () => {
  const shop = await start(service, temporaryFile());
  await expect.poll(shop.out).toMatch(/"level":40.+RIMWISE_PUBLIC_URL: labels .+ no phone reaches/);
  const open = await start(service, temporaryFile(), { RIMWISE_PUBLIC_URL: "https://shop.example" });
  open.process.kill("SIGTERM");
  await exited(open);
  expect(open.out()).not.toContain("RIMWISE_PUBLIC_URL");
});

test("a command that is not known, or not used as it is meant, says which there are", async () => {
  const { code, err } = await ran([...service, "backpu"], {});
  expect([code, err]).toEqual([1, expect.stringMatching(/no command backpu\.[\s\S]+ {2}backup FILE/)]);
  expect((await ran([...service, "restore", "--force", "x"], {})).err).toMatch(/restore FILE \[--replace\]/);
  expect((await ran([...service, "help"], {})).out).toContain("new-manager-key [NAME]");
});

/** The file of the package manager that the project names. */
function packageManager(): string {
  const named = process.env["npm_execpath"] ?? "";
  if (/pnpm\.c?js$/.test(named)) return named;
  const asked = ["-y", "pnpm@10", "--silent", "exec", "node", "-p", "process.env.npm_execpath"];
  return execFileSync("npx", asked, { encoding: "utf8" }).trim();
}
