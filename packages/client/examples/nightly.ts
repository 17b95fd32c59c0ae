import { appendFile, readFile, rename, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { createClient } from "@rimwise/client";

// Writes what is due into a folder, then follows what happens until it is stopped, each event one line.
// node nightly.js FOLDER [MINUTES]     goes on after the last event that it wrote; without minutes until Ctrl-C

const [folder = ".", minutes] = process.argv.slice(2);
const client = createClient({
  baseUrl: process.env["RIMWISE_URL"] ?? "http://127.0.0.1:8080",
  key: process.env["RIMWISE_KEY"],
});
const EVENTS = join(folder, "events.ndjson");
const LONGEST_LIST = 10_000;
const MINUTE_MS = 60_000;

const stopping = new AbortController();
for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => stopping.abort());
if (minutes !== undefined) setTimeout(() => stopping.abort(), Number(minutes) * MINUTE_MS).unref();

await writeDue();
try {
  for await (const event of client.events.follow({ after: await lastWritten(), signal: stopping.signal }))
    await appendFile(EVENTS, `${JSON.stringify(event)}\n`);
} catch (error) {
  // Whatever ends it but the stop is to be seen by whoever runs it.
  if (!stopping.signal.aborted) throw error;
}

async function writeDue(): Promise<void> {
  const limit = { limit: LONGEST_LIST };
  const inspections = await client.stock.listDue().all(limit);
  const loans = await client.loans.list({ state: "overdue" }).all(limit);
  const reorder = await client.stock.listToReorder().all(limit);
  const due = {
    inspections: inspections.map(({ bit: { id, name }, dueAt, reason }) => ({ id, name, dueAt, reason })),
    overdueLoans: loans.map(({ id, bitId, personId, dueAt }) => ({ id, bitId, personId, dueAt })),
    reorder: reorder.map(({ bit: { id, name } }) => ({ id, name })),
  };
  // Whoever reads it meanwhile sees the old list or the new one, never half of one.
  const place = join(folder, "due.json");
  await writeFile(`${place}.new`, `${JSON.stringify(due, undefined, 2)}\n`);
  await rename(`${place}.new`, place);
  process.stdout.write(
    `${due.inspections.length} inspections due, ${due.overdueLoans.length} loans overdue.\n`,
  );
}

/** The sequence of the last whole line that was written; 0 at the first run. */
async function lastWritten(): Promise<number> {
  const text = await readFile(EVENTS, "utf8").catch(() => "");
  const whole = text.slice(0, text.lastIndexOf("\n") + 1);
  // A line that a power cut left unfinished is written again.
  if (whole !== text) await writeFile(EVENTS, whole);
  const last = whole.trimEnd().split("\n").at(-1);
  return last === undefined || last === "" ? 0 : JSON.parse(last).sequence;
}
