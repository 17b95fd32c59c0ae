import { expect, test } from "vitest";
import { OPERATIONS } from "../contract/bodies.ts";
import { type Failure, fuzzOneShop, REQUESTS_OF_A_SHOP } from "./run.ts";

/** `pnpm fuzz` sets them; a test run sends a few. */
const REQUESTS = Number(process.env["FUZZ_REQUESTS"] ?? 600);
const SEED = Number(process.env["FUZZ_SEED"] ?? 1);

/** A minute for each thousand: they take a few seconds. */
const TIME_LIMIT_MS = 60_000 * Math.ceil(REQUESTS / 1000 + 1);

const MOST_SHOWN = 20;

test(
  `${REQUESTS} random requests from seed ${SEED} on fail nowhere inside, are answered as documented, and write what they say`,
  async () => {
    const failures: Failure[] = [];
    const done = new Set<string>();
    for (let sent = 0, seed = SEED; sent < REQUESTS; sent += REQUESTS_OF_A_SHOP, seed += 1) {
      const run = await fuzzOneShop(seed, Math.min(REQUESTS_OF_A_SHOP, REQUESTS - sent));
      failures.push(...run.failures);
      for (const name of run.statuses.keys()) if (/ 2\d\d$/.test(name)) done.add(name.split(" ")[0] ?? "");
    }
    expect(failures.slice(0, MOST_SHOWN), `${failures.length} in all`).toEqual([]);
    // Not all of them are refused: else it would be tried only how to say no.
    expect(done.size).toBeGreaterThan(Math.min(REQUESTS / 10, OPERATIONS.length * 0.6));
  },
  TIME_LIMIT_MS,
);
