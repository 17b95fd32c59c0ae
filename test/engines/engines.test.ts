import { spawn } from "node:child_process";
import { once } from "node:events";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { expect, onTestFinished, test } from "vitest";
import { SERVER } from "../../services/shop/testing/database-under-test.ts";
import { describeOnPostgresql } from "../../services/shop/testing/one-engine.ts";
import { REQUESTS_OF_A_SHOP } from "../fuzz/run.ts";

/** `pnpm fuzz:engines` sets them; a test run sends a few. */
const REQUESTS = Number(process.env["ENGINE_REQUESTS"] ?? 600);
const SEED = Number(process.env["ENGINE_SEED"] ?? 1);

const CHILD = fileURLToPath(new URL("history-child.ts", import.meta.url));
const TIME_LIMIT_MS = 120_000 * Math.ceil(REQUESTS / 1000 + 1);

/** The lines of a process that sends the requests to shops on one engine. */
function linesOf(server: string | undefined, seed: number, requests: number, form: string) {
  const { [SERVER]: _, ...environment } = process.env;
  const child = spawn(
    process.execPath,
    ["--conditions=source", "--import", "tsx", CHILD, String(seed), String(requests), form],
    {
      env: { ...environment, ...(server !== undefined && { [SERVER]: server }) },
      stdio: ["ignore", "pipe", "inherit"],
    },
  );
  onTestFinished(() => void child.kill());
  return {
    lines: createInterface({ input: child.stdout })[Symbol.asyncIterator](),
    ended: once(child, "exit"),
  };
}

/** The first line that the engines differ in, with how many were alike before it. */
async function firstDifference(server: string, seed: number, requests: number, form = "digest") {
  const engines = [linesOf(undefined, seed, requests, form), linesOf(server, seed, requests, form)] as const;
  for (let alike = 0; ; alike += 1) {
    const [sqlite, postgresql] = await Promise.all(engines.map(({ lines }) => lines.next()));
    if (sqlite?.done === true && postgresql?.done === true) {
      expect(await Promise.all(engines.map(async ({ ended }) => (await ended)[0]))).toEqual([0, 0]);
      return { alike };
    }
    if (sqlite?.value !== postgresql?.value) return { alike, differs: [sqlite?.value, postgresql?.value] };
  }
}

describeOnPostgresql("one random history on both engines", (server) => {
  test(
    `of ${REQUESTS} requests from seed ${SEED} on gives the same answers, events and hashes`,
    async () => {
      const { alike, differs } = await firstDifference(server, SEED, REQUESTS);
      if (differs !== undefined) {
        // Once more, with the answers themselves, as far as the shop that differs.
        const seed = Number(String(differs[0] ?? differs[1]).split(" ")[0]);
        const again = await firstDifference(server, seed, REQUESTS_OF_A_SHOP, "whole");
        expect(again.differs?.[1], `after ${alike} alike`).toBe(again.differs?.[0]);
      }
      expect(differs).toBeUndefined();
      expect(alike).toBeGreaterThan(REQUESTS * 0.9);
    },
    TIME_LIMIT_MS,
  );
});
