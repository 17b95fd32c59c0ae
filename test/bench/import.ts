import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { monitorEventLoopDelay } from "node:perf_hooks";
import { buildApp, grantFirstKey, openShopStore, readConfig } from "@rimwise/shop";
import Sqlite from "better-sqlite3";

const ROWS = 10_000;
const MODES = ["all-or-nothing", "row-by-row"];
const NS_PER_MS = 1e6;

/**
 * A file of 10,000 bits over HTTP, as a multiple of writing the same rows of the same table, plain, in one transaction; and how
 * long the service answered nobody else at the most.
 */
export async function benchImport(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-bench-"));
  const rows: string[] = [];
  try {
    for (const mode of MODES) {
      const file = join(folder, `${mode}.sqlite`);
      const { seconds, longestBlockMs } = await importInto(file, mode);
      const plainSeconds = plainInserts(file);
      rows.push(
        `  ${mode.padEnd(15)} ${(ROWS / seconds).toFixed(0).padStart(6)} rows/s   ${(seconds / plainSeconds).toFixed(1).padStart(5)} × plain inserts   ` +
          `longest block ${longestBlockMs.toFixed(0)} ms`,
      );
    }
  } finally {
    rmSync(folder, { recursive: true });
  }
  return [`Import of ${ROWS} bits from CSV`, ...rows].join("\n");
}

async function importInto(file: string, mode: string) {
  const store = await openShopStore(file);
  const key = (await grantFirstKey(store, undefined)) ?? "";
  const config = readConfig({ RIMWISE_LOG_LEVEL: "silent", RIMWISE_BUSY_AFTER_MS: "0" });
  const { app } = await buildApp({ config, store });
  const url = await app.listen({ port: 0 });
  const delay = monitorEventLoopDelay({ resolution: 5 });
  delay.enable();
  const started = performance.now();
  const answer = await fetch(`${url}/v1/bits/import?mode=${mode}`, {
    method: "POST",
    headers: { authorization: `Bearer ${key}`, "content-type": "text/csv" },
    body: csv(),
  });
  const { created }: { created: number } = await answer.json();
  const seconds = (performance.now() - started) / 1000;
  delay.disable();
  await app.close();
  await store.close();
  if (created !== ROWS) throw new Error(`${created} of ${ROWS} rows were taken`);
  return { seconds, longestBlockMs: delay.max / NS_PER_MS };
}

function csv(): string {
  const rows = Array.from(
    { length: ROWS },
    (_, index) =>
      `Panel ${index},panel-raising,${60 + (index % 300) / 10},12.7,11,cove,12.7,2,340,"18,000 rpm"`,
  );
  return [
    "name,kind,diameterMm,pilotDiameterMm,profileHeightMm,face,shankDiameterMm,wings,massG,markedMaxRpm",
    ...rows,
  ].join("\n");
}

/** Seconds to write the bits of a shop once more, without their indexes being looked at by anybody. */
function plainInserts(file: string): number {
  const database = new Sqlite(file);
  database.pragma("synchronous = FULL");
  const rows = database.prepare<[], unknown[]>("SELECT * FROM bits").raw().all();
  database.exec("DELETE FROM bits");
  const insert = database.prepare(`INSERT INTO bits VALUES (${(rows[0] ?? []).map(() => "?").join()})`);
  const started = performance.now();
  database
    .transaction(() => {
      for (const row of rows) insert.run(row);
    })
    .immediate();
  const seconds = (performance.now() - started) / 1000;
  database.close();
  return seconds;
}
