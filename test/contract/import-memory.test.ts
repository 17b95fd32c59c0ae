import { execFile } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { describe, expect, onTestFinished, test } from "vitest";
import { bundleProgram } from "../../services/shop/bundle/bundle.ts";
import { newDatabase } from "../../services/shop/testing/behind-the-service.ts";

type Measured = { readonly created: number; readonly live: number; readonly wholeGrowth: number };

const CHILD = fileURLToPath(new URL("import-memory-child.ts", import.meta.url));
const MB = 1e6;

/** All that the process may hold: some 45 MB are its code and the idle service. */
const MOST_HEAP_MB = 80;
/** Five times the rows may take this much more of the live heap. The rows as objects would be some 7 MB. */
const MOST_LIVE_RATIO = 1.1;
/** SQLite's page cache, 16 MB, is part of it. */
const MOST_WHOLE_GROWTH_MB = 64;

describe("an import of 3,000 rows takes no more memory than one of 600", { timeout: 240_000 }, () => {
  test.each(["all-or-nothing", "row-by-row"])("%s", async (mode) => {
    const few = await measured(mode, 600);
    const many = await measured(mode, 3000);
    expect([few.created, many.created]).toEqual([600, 3000]);
    expect(many.live / few.live).toBeLessThan(MOST_LIVE_RATIO);
    expect(many.wholeGrowth / MB).toBeLessThan(MOST_WHOLE_GROWTH_MB);
  });
});

let program: Promise<string> | undefined;

/** In a process of its own, whose heap cannot grow beyond the bound. */
async function measured(mode: string, rows: number): Promise<Measured> {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-import-"));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  program ??= bundleProgram({ name: "import-memory-child", program: CHILD });
  const options = [`--max-old-space-size=${MOST_HEAP_MB}`, "--max-semi-space-size=2", "--expose-gc"];
  const { stdout } = await promisify(execFile)(process.execPath, [
    ...options,
    ...[await program, newDatabase(folder), mode, String(rows)],
  ]);
  return JSON.parse(stdout);
}
