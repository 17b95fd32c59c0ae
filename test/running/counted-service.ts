import { fork } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { builtService } from "./built-service.ts";
import { FIRST_KEY, freePort, printedBy, ready } from "./service-process.ts";
import { UNLIMITED } from "./unlimited.ts";

const COUNT_STEPS = fileURLToPath(new URL("count-steps.cjs", import.meta.url));

/** Code that was compiled before has no counters in it: with other flags the engine compiles all of it itself, and keeps it. */
const OTHER_FLAGS = "--no-flush-bytecode";

type Sent = {
  readonly method?: string;
  readonly body?: string;
  readonly headers?: Record<string, string>;
  readonly signal?: AbortSignal;
};

/** A service in a process of its own whose work is counted: the same on every machine, however busy it is. */
export type CountedService = {
  readonly send: (path: string, sent?: Sent) => Promise<Response>;
  /** How many blocks of code it has run since this was asked before. */
  readonly stepsSince: () => Promise<number>;
};

/** Starts one on a new shop; `keptFor` is vitest's afterAll. */
export async function startCounted(keptFor: (release: () => void) => void): Promise<CountedService> {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-counted-"));
  const port = await freePort();
  const child = fork(await builtService(), [], {
    execArgv: [OTHER_FLAGS, "--require", COUNT_STEPS],
    env: {
      PATH: process.env["PATH"],
      RIMWISE_DATABASE: join(folder, "shop.sqlite"),
      RIMWISE_PORT: String(port),
      RIMWISE_FIRST_KEY: FIRST_KEY,
      ...UNLIMITED,
    },
    stdio: ["ignore", "pipe", "pipe", "ipc"],
  });
  keptFor(() => {
    child.kill("SIGKILL");
    rmSync(folder, { recursive: true, force: true });
  });
  const url = `http://127.0.0.1:${port}`;
  await ready(url, printedBy(child));
  return {
    send: (path, { headers, ...sent } = {}) =>
      fetch(`${url}${path}`, {
        ...sent,
        headers: { authorization: `Bearer ${FIRST_KEY}`, ...headers },
      }),
    stepsSince: async () => {
      const answered = once(child, "message");
      child.send("count");
      const [{ steps }] = await answered;
      return steps;
    },
  };
}
