import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import Database from "better-sqlite3";
import { describe, expect, onTestFinished, test } from "vitest";
import { builtService } from "../running/built-service.ts";
import { CSV, manyStraights } from "./import-files.ts";

const KEY = "a-long-enough-first-key-of-the-invented-shop";
const ROWS = 1000;
const FILE = manyStraights(ROWS);

type Running = { readonly process: ChildProcess; readonly url: string };

describe("a service killed with kill -9 amid an import", { timeout: 240_000 }, () => {
  test("all or nothing, has all of it or nothing of it, and is whole", async () => {
    const lastsMs = await timeOfOneImport();
    const seen: number[] = [];
    for (const share of [0.05, 0.5, 0.9, 0.97]) {
      const file = temporaryFile();
      const service = await start(file);
      const answer = send(service, "all-or-nothing");
      await pause(share * lastsMs);
      await kill(service);
      const status = await answer;
      const bits = count(file, "bits");
      seen.push(bits);
      expect([0, ROWS]).toContain(bits);
      if (status === 200) expect(bits).toBe(ROWS);
      expect(count(file, "imports")).toBe(bits / ROWS);
      expect(count(file, "events WHERE type IN ('bit.created', 'import.created')")).toBe(bits + bits / ROWS);
      expectWhole(file);
    }
    expect(seen, "one was killed before its end").toContain(0);
  });

  test("row by row, has whole rows, and knows the file again", async () => {
    const file = temporaryFile();
    const service = await start(file);
    const answer = send(service, "row-by-row");
    while (count(file, "bits") === 0) await pause(20);
    await kill(service);
    expect(await answer).toBeUndefined();
    const bits = count(file, "bits");
    expect(bits).toBeLessThan(ROWS);
    expect(count(file, "events WHERE type = 'bit.created'")).toBe(bits);
    expectWhole(file);
    const again = await start(file);
    expect(await send(again, "row-by-row")).toBe(409);
    expect(count(file, "bits")).toBe(bits);
    await kill(again);
  });
});

async function timeOfOneImport(): Promise<number> {
  const service = await start(temporaryFile());
  const started = performance.now();
  expect(await send(service, "all-or-nothing")).toBe(200);
  const lastsMs = performance.now() - started;
  await kill(service);
  return lastsMs;
}

/** The status, or undefined if no answer came. */
async function send({ url }: Running, mode: string): Promise<number | undefined> {
  const response = await fetch(`${url}/v1/bits/import?mode=${mode}`, {
    method: "POST",
    headers: { authorization: `Bearer ${KEY}`, "content-type": CSV },
    body: FILE,
  }).catch(() => undefined);
  return response?.status;
}

function expectWhole(file: string): void {
  const database = new Database(file, { readonly: true });
  expect(database.pragma("integrity_check", { simple: true })).toBe("ok");
  const broken = `events AS later JOIN events AS earlier ON earlier.sequence = later.sequence - 1
    WHERE later.previous_hash <> earlier.hash`;
  expect(database.prepare(`SELECT count(*) FROM ${broken}`).pluck().get()).toBe(0);
  database.close();
}

function count(file: string, what: string): number {
  const database = new Database(file, { readonly: true });
  const found = database.prepare(`SELECT count(*) FROM ${what}`).pluck().get();
  database.close();
  return Number(found);
}

function temporaryFile(): string {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-import-"));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  return join(folder, "shop.sqlite");
}

async function start(file: string): Promise<Running> {
  const child = spawn(process.execPath, [await builtService()], {
    env: {
      PATH: process.env["PATH"],
      RIMWISE_DATABASE: file,
      RIMWISE_PORT: "0",
      RIMWISE_FIRST_KEY: KEY,
      RIMWISE_BUSY_AFTER_MS: "0",
    },
    stdio: ["ignore", "pipe", "inherit"],
  });
  onTestFinished(() => void child.kill("SIGKILL"));
  let printed = "";
  for (;;) {
    const [piece] = await once(child.stdout, "data");
    printed += String(piece);
    const [url] = /http:\/\/127\.0\.0\.1:\d+/.exec(printed) ?? [];
    if (url === undefined) continue;
    // What it prints from here on is read by nobody, and must not hold it up.
    child.stdout.resume();
    return { process: child, url };
  }
}

async function kill({ process: child }: Running): Promise<void> {
  const exited = once(child, "exit");
  child.kill("SIGKILL");
  await exited;
}
