import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import Database from "better-sqlite3";
import { describe, expect, onTestFinished, test } from "vitest";

const SERVICE = fileURLToPath(new URL("../../services/shop/", import.meta.url));
const START_WITHIN_MS = 30_000;

type Running = { process: ChildProcess; url: string; printed: () => string };

const BIT = {
  name: "Straight, 12 mm",
  form: { kind: "straight", diameterMm: 12, cuttingLengthMm: 30 },
  shankDiameterMm: 12,
  wings: 2,
};

describe("a process that is killed with kill -9 amid acknowledged creates", { timeout: 120_000 }, () => {
  test("has every acknowledged bit when it starts again, each with its event, and no half of another", async () => {
    const file = temporaryFile();
    let service = await start(file);
    const key = /rw_[0-9a-f_]+/.exec(service.printed())?.[0] ?? "";
    const acknowledged = new Set<string>();
    for (const killAfter of [15, 60, 150]) {
      const createUntilGone = async () => {
        for (;;) {
          const response = await create(service.url, key).catch(() => undefined);
          if (response?.status !== 201) return;
          const { id }: { id: string } = await response.json();
          acknowledged.add(id);
          if (acknowledged.size >= killAfter) service.process.kill("SIGKILL");
        }
      };
      await Promise.all(Array.from({ length: 8 }, createUntilGone));
      await exited(service.process);
      service = await start(file);
      expect(service.printed(), "a database that has a key is given no other").not.toContain("rw_");
      const found = await allIds(service.url, key);
      expect([...acknowledged].filter((id) => !found.has(id))).toEqual([]);
    }
    service.process.kill("SIGTERM");
    expect(await exited(service.process)).toBe(0);
    expect(acknowledged.size).toBeGreaterThanOrEqual(150);

    const database = new Database(file, { readonly: true });
    expect(database.pragma("integrity_check", { simple: true })).toBe("ok");
    const count = (sql: string) => database.prepare(sql).pluck().get();
    expect(count("SELECT count(*) FROM bits")).toBe(
      count("SELECT count(*) FROM events WHERE type = 'bit.created'"),
    );
    expect(
      count(`SELECT count(*) FROM events AS later JOIN events AS earlier ON earlier.sequence = later.sequence - 1
             WHERE later.previous_hash <> earlier.hash`),
    ).toBe(0);
    database.close();
  });
});

describe("the process", { timeout: 120_000 }, () => {
  test("refuses wrong settings with one sentence for each, and no stack", async () => {
    const child = run({ RIMWISE_PORT: "none", RIMWISE_LOG_LEVEL: "loud" });
    let errors = "";
    child.stderr?.on("data", (chunk) => {
      errors += chunk;
    });
    expect(await exited(child)).toBe(1);
    expect(errors).toMatch(/RIMWISE_PORT: .+ 0 to 65535/);
    expect(errors).toMatch(/RIMWISE_LOG_LEVEL: .+ fatal, error/);
    expect(errors).not.toMatch(/\bat .+\.ts/);
  });

  test("takes the first key from its settings and then prints none", async () => {
    const file = temporaryFile();
    const maker = await start(temporaryFile());
    const key = /rw_[0-9a-f_]+/.exec(maker.printed())?.[0] ?? "";
    const service = await start(file, { RIMWISE_FIRST_KEY: key });
    expect(service.printed()).not.toContain("rw_");
    expect((await create(service.url, key)).status).toBe(201);
  });
});

function temporaryFile(): string {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-crash-"));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  return join(folder, "shop.sqlite");
}

/** The service itself, without a shell or package manager between: the signal must reach it. */
function run(settings: Record<string, string>): ChildProcess {
  const child = spawn(process.execPath, ["--import", "tsx", "--conditions=source", "src/main.ts"], {
    cwd: SERVICE,
    env: { PATH: process.env["PATH"], RIMWISE_DATABASE: ":memory:", ...settings },
    stdio: ["ignore", "pipe", "pipe"],
  });
  onTestFinished(() => void child.kill("SIGKILL"));
  return child;
}

async function start(file: string, settings: Record<string, string> = {}): Promise<Running> {
  const port = await freePort();
  const child = run({
    RIMWISE_DATABASE: file,
    RIMWISE_PORT: String(port),
    RIMWISE_RATE_LIMIT_PER_MINUTE: "1000000",
    RIMWISE_BUSY_AFTER_MS: "0",
    ...settings,
  });
  let printed = "";
  child.stdout?.on("data", (chunk) => {
    printed += chunk;
  });
  const url = `http://127.0.0.1:${port}`;
  const giveUpAt = Date.now() + START_WITHIN_MS;
  for (;;) {
    const ready = await fetch(`${url}/readyz`).catch(() => undefined);
    if (ready?.status === 200) return { process: child, url, printed: () => printed };
    if (Date.now() > giveUpAt || child.exitCode !== null)
      throw new Error(`the service did not start: ${printed}`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

function create(url: string, key: string): Promise<Response> {
  return fetch(`${url}/v1/bits`, {
    method: "POST",
    headers: { authorization: `Bearer ${key}`, "content-type": "application/json" },
    body: JSON.stringify(BIT),
  });
}

async function allIds(url: string, key: string): Promise<Set<string>> {
  const ids = new Set<string>();
  let cursor: string | null = "";
  while (cursor !== null) {
    const response = await fetch(`${url}/v1/bits?limit=200${cursor && `&cursor=${cursor}`}`, {
      headers: { authorization: `Bearer ${key}` },
    });
    const page: { data: { id: string }[]; nextCursor: string | null } = await response.json();
    for (const { id } of page.data) ids.add(id);
    cursor = page.nextCursor;
  }
  return ids;
}

async function exited(child: ChildProcess): Promise<number | null> {
  if (child.exitCode === null && child.signalCode === null) await once(child, "exit");
  return child.exitCode;
}

async function freePort(): Promise<number> {
  const server = createServer().listen(0, "127.0.0.1");
  await once(server, "listening");
  const address = server.address();
  server.close();
  await once(server, "close");
  return typeof address === "object" && address !== null ? address.port : 0;
}
