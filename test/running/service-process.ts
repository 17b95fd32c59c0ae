import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { onTestFinished } from "vitest";
import { newDatabase } from "../../services/shop/testing/behind-the-service.ts";
import { serverUnderTest } from "../../services/shop/testing/database-under-test.ts";

const SHOP = fileURLToPath(new URL("../../services/shop/", import.meta.url));
const START_WITHIN_MS = 30_000;
export const FIRST_KEY = "a-long-enough-first-key-of-the-invented-shop";

/** What runs the service: Node's arguments. Without a shell or package manager between, so that signals reach it. */
export const FROM_SOURCE: readonly string[] = [
  ...["--conditions=source", "--import", "tsx"],
  join(SHOP, "src/main.ts"),
];

export type Settings = Readonly<Record<string, string>>;

/** A process and what it has printed so far. */
export type Child = {
  readonly process: ChildProcess;
  readonly out: () => string;
  readonly err: () => string;
};

export type Running = Child & {
  readonly url: string;
  /** The first manager's key, taken from its file. */
  readonly key: string;
};

/** A folder that is gone after the test. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-running-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** On PostgreSQL no file's name says where a shop's keys are kept. */
const folders = new Map<string, string>();

/** Where a shop's database is to be: a file, or a schema on the server under test. */
export function temporaryDatabase(): string {
  const folder = temporaryFolder();
  const database = newDatabase(folder);
  folders.set(database, folder);
  return database;
}

/** Where a shop's SQLite file is to be. */
export function temporaryFile(): string {
  return join(temporaryFolder(), "shop.sqlite");
}

/** Starts a program with these settings and no other. It is ended after the test. */
export function run(command: readonly string[], settings: Settings, program = process.execPath): Child {
  const child = spawn(program, command, {
    cwd: SHOP,
    env: { PATH: process.env["PATH"], HOME: process.env["HOME"], ...settings },
    stdio: ["ignore", "pipe", "pipe"],
  });
  onTestFinished(() => void child.kill("SIGKILL"));
  return printedBy(child);
}

/** A process whose output is kept. */
export function printedBy(child: ChildProcess): Child {
  const printed = { out: "", err: "" };
  child.stdout?.on("data", (chunk) => {
    printed.out += chunk;
  });
  child.stderr?.on("data", (chunk) => {
    printed.err += chunk;
  });
  return { process: child, out: () => printed.out, err: () => printed.err };
}

/** Runs a command to its end. */
export async function ran(command: readonly string[], settings: Settings) {
  const child = run(command, settings);
  const code = await exited(child);
  return { code, out: child.out(), err: child.err() };
}

/** Starts the service on a free port and waits until it is ready and its first key is handed over. */
export async function start(
  service: readonly string[],
  file: string,
  settings: Settings = {},
): Promise<Running> {
  const port = await freePort();
  const child = run(service, {
    RIMWISE_DATABASE: file,
    RIMWISE_PORT: String(port),
    RIMWISE_RATE_LIMIT_PER_MINUTE: "1000000",
    RIMWISE_BUSY_AFTER_MS: "0",
    ...keysOf(file),
    ...settings,
  });
  const url = `http://127.0.0.1:${port}`;
  await ready(url, child);
  const keyFile = `${file}.first-key`;
  const given = { ...keysOf(file), ...settings }["RIMWISE_FIRST_KEY"];
  await until(() => given !== undefined || existsSync(keyFile));
  const key = given ?? readFileSync(keyFile, "utf8").trim();
  return { ...child, url, key };
}

function keysOf(database: string): Settings {
  const folder = folders.get(database);
  if (serverUnderTest() === undefined || folder === undefined) return {};
  return { RIMWISE_SIGNING_KEYS: join(folder, "signing-keys.json"), RIMWISE_FIRST_KEY: FIRST_KEY };
}

/** Waits until a service that was started says that it is ready. */
export async function ready(url: string, { process: child, out, err }: Child): Promise<void> {
  await until(async () => {
    if (child.exitCode !== null) throw new Error(`the service did not start: ${out()}${err()}`);
    return (await fetch(`${url}/readyz`).catch(() => undefined))?.status === 200;
  });
}

/** The code that a process ends with, once all it printed has been read; null when a signal ended it. */
export async function exited({ process: child }: Child): Promise<number | null> {
  if (child.exitCode === null && child.signalCode === null) await once(child, "close");
  return child.exitCode;
}

/** A port of this machine that nobody listens on. */
export async function freePort(): Promise<number> {
  const server = createServer().listen(0, "127.0.0.1");
  await once(server, "listening");
  const address = server.address();
  server.close();
  await once(server, "close");
  return typeof address === "object" && address !== null ? address.port : 0;
}

async function until(isSo: () => boolean | Promise<boolean>): Promise<void> {
  const giveUpAt = Date.now() + START_WITHIN_MS;
  while (!(await isSo())) {
    if (Date.now() > giveUpAt) throw new Error("waited for too long");
    await new Promise((resolve) => setTimeout(resolve, 25));
  }
}

/** Asks the service as the manager. */
export async function ask({ url, key }: Pick<Running, "url" | "key">, path: string, body?: object) {
  const answer = await fetch(`${url}${path}`, {
    method: body === undefined ? "GET" : "POST",
    headers: { authorization: `Bearer ${key}`, ...(body && { "content-type": "application/json" }) },
    ...(body && { body: JSON.stringify(body) }),
  });
  return { status: answer.status, body: await answer.json() };
}
