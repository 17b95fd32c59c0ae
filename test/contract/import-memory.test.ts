import { execFile } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { describe, expect, onTestFinished, test } from "vitest";

type Measured = { readonly created: number; readonly live: number; readonly wholeGrowth: number };

const TEST_FOLDER = fileURLToPath(new URL("..", import.meta.url));
const MB = 1e6;

/** All that the process may hold: some 45 MB are its code and the idle service. */
const MOST_HEAP_MB = 80;
/** Five times the rows may take this much more of the live heap. The rows as objects would be some 25 MB. */
const MOST_LIVE_RATIO = 1.1;
/** SQLite's page cache, 16 MB, is part of it. */
const MOST_WHOLE_GROWTH_MB = 64;

describe("an import of 10,000 rows takes no more memory than one of 2,000", { timeout: 240_000 }, () => {
  test.each(["all-or-nothing", "row-by-row"])("%s", async (mode) => {
    const few = await measured(mode, 2000);
    const many = await measured(mode, 10_000);
    expect([few.created, many.created]).toEqual([2000, 10_000]);
    expect(many.live / few.live).toBeLessThan(MOST_LIVE_RATIO);
    expect(many.wholeGrowth / MB).toBeLessThan(MOST_WHOLE_GROWTH_MB);
  });
});

/** In a process of its own, whose heap cannot grow beyond the bound. */
async function measured(mode: string, rows: number): Promise<Measured> {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-import-"));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  const options = [`--max-old-space-size=${MOST_HEAP_MB}`, "--max-semi-space-size=2", "--expose-gc"];
  const source = ["--import", "tsx", "--conditions=source", "contract/import-memory-child.ts"];
  const { stdout } = await promisify(execFile)(
    process.execPath,
    [...options, ...source, join(folder, "shop.sqlite"), mode, String(rows)],
    { cwd: TEST_FOLDER },
  );
  return JSON.parse(stdout);
}
