import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { readFileSync } from "node:fs";
import { createServer } from "node:net";
import { setTimeout as sleep } from "node:timers/promises";

/** A server in a process of its own. */
export type Server = {
  readonly url: string;
  /** From the start of the process to its first 200. */
  readonly startMs: number;
  /** Processor time used so far, user and system. */
  readonly cpuSeconds: () => number;
  readonly residentMb: () => number;
  readonly stop: () => Promise<void>;
};

/** Linux counts processor time in hundredths of a second. */
const TICKS_PER_SECOND = 100;
const ASK_EVERY_MS = 2;

/** Starts a server and waits for its first 200 at a path. */
export async function startServer(
  args: readonly string[],
  environment: Readonly<Record<string, string>>,
  firstPath: string,
): Promise<Server> {
  const port = await freePort();
  const url = `http://127.0.0.1:${port}`;
  const started = performance.now();
  const child = spawn(process.execPath, args, {
    env: { ...process.env, ...environment, RIMWISE_PORT: String(port) },
    stdio: ["ignore", "ignore", "inherit"],
  });
  await firstAnswer(`${url}${firstPath}`, child);
  const startMs = performance.now() - started;
  return {
    url,
    startMs,
    cpuSeconds: () => cpuSecondsOf(child),
    residentMb: () => residentMbOf(child),
    stop: async () => {
      child.kill();
      await once(child, "exit");
    },
  };
}

async function firstAnswer(url: string, child: ChildProcess): Promise<void> {
  while (child.exitCode === null) {
    const answer = await fetch(url).catch(() => undefined);
    if (answer?.ok) return;
    await sleep(ASK_EVERY_MS);
  }
  throw new Error(`the server for ${url} ended with ${child.exitCode}`);
}

/** Fields 14 and 15 of proc_pid_stat(5), after the name, which may hold anything. */
function cpuSecondsOf({ pid }: ChildProcess): number {
  const fields = readFileSync(`/proc/${pid}/stat`, "utf8").split(") ").at(-1)?.split(" ") ?? [];
  return (Number(fields[11]) + Number(fields[12])) / TICKS_PER_SECOND;
}

function residentMbOf({ pid }: ChildProcess): number {
  const [, kilobytes] = /^VmRSS:\s+(\d+) kB/m.exec(readFileSync(`/proc/${pid}/status`, "utf8")) ?? [];
  return Number(kilobytes) / 1024;
}

async function freePort(): Promise<number> {
  const server = createServer().listen(0, "127.0.0.1");
  await once(server, "listening");
  const address = server.address();
  server.close();
  await once(server, "close");
  if (address === null || typeof address === "string") throw new Error("no port was given");
  return address.port;
}
