import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { serverUnderTest } from "../../services/shop/testing/database-under-test.ts";

const MAIN = fileURLToPath(new URL("main.ts", import.meta.url));
const TIME_LIMIT_MS = 300_000;

/** Continuous integration asks for more. On PostgreSQL every seed furnishes a shop of its own, which takes most of its time. */
const SEEDS = serverUnderTest() === undefined ? Number(process.env["SIMULATION_SEEDS"] ?? 12) : 40;
const STEPS = 6;

test(
  `${SEEDS} short seeds: every answer, list, setting, sheet and event is as the model says`,
  () => {
    const args = [
      "--conditions=source",
      "--import",
      "tsx",
      MAIN,
      "--count",
      String(SEEDS),
      "--steps",
      String(STEPS),
    ];
    const { stdout, stderr, status } = spawnSync(process.execPath, args, { encoding: "utf8" });
    expect(`${stdout}${stderr}`).toContain(`${SEEDS} seeds simulated, 0 failed`);
    expect(status).toBe(0);
    // Not for want of anything that happened.
    for (const what of [
      "lend done",
      "issue done",
      "weigh version-stale",
      "with crash-after-commit",
      "with answers-lost",
      "with older-schema",
      "with newer-schema",
    ])
      expect(Number(new RegExp(`^(\\d+) × ${what}$`, "m").exec(stdout)?.[1] ?? 0), what).toBeGreaterThan(
        SEEDS / 20,
      );
  },
  TIME_LIMIT_MS,
);
