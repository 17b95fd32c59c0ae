import { type ChildProcess, spawn } from "node:child_process";
import { randomBytes } from "node:crypto";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";

/** A running service on a temporary database. */
export type RunningService = {
  readonly baseUrl: string;
  readonly key: string;
  readonly database: string;
  readonly stop: () => Promise<void>;
};

const SHOP = fileURLToPath(new URL("../../shop/", import.meta.url));
const KEY_BYTES = 24;

/** Starts the service as its own process, on a free port of this machine, and waits until it listens. */
export async function startService(): Promise<RunningService> {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-demo-"));
  const database = join(folder, "shop.sqlite");
  const key = randomBytes(KEY_BYTES).toString("hex");
  const child = spawn(process.execPath, ["--conditions=source", "--import", "tsx", "src/main.ts"], {
    cwd: SHOP,
    env: {
      ...process.env,
      RIMWISE_DATABASE: database,
      RIMWISE_FIRST_KEY: key,
      RIMWISE_PORT: "0",
      RIMWISE_HOST: "127.0.0.1",
    },
    stdio: ["ignore", "pipe", "inherit"],
  });
  const baseUrl = await addressOf(child);
  return {
    baseUrl,
    key,
    database,
    stop: async () => {
      const ended = once(child, "exit");
      child.kill("SIGTERM");
      await ended;
      rmSync(folder, { recursive: true });
    },
  };
}

/** The address, as the service logs it when it listens. */
async function addressOf(child: ChildProcess): Promise<string> {
  if (child.stdout === null) throw new Error("the service has no output to read");
  for await (const line of createInterface({ input: child.stdout })) {
    const baseUrl = /Server listening at (http:[^\s"]+)/.exec(line)?.[1];
    if (baseUrl !== undefined) return baseUrl;
  }
  throw new Error("the service ended before it listened");
}
