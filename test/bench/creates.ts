import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import {
  bitKind,
  buildApp,
  creation,
  grantFirstKey,
  openShopStore,
  readConfig,
  type Store,
} from "@rimwise/shop";
import autocannon from "autocannon";
import { UNLIMITED } from "../running/unlimited.ts";
import { bitAt } from "./shop.ts";

const SECONDS = 2;
/** Turns that alternate: a machine that slows down for a while slows both down. */
const TURNS = 7;
const CLIENTS = 64;

const BIT = { name: "Straight, 12.7 mm", ...bitAt(0) };

/**
 * Durable creates over HTTP with many clients beside commits of the same record one at a time through the same door, each
 * flushed to the disk before the next: what grouping commits gains, with HTTP paid for.
 */
export async function benchCreates(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-bench-"));
  try {
    const database = join(folder, "shop.sqlite");
    const config = readConfig({
      RIMWISE_DATABASE: database,
      ...UNLIMITED,
    });
    const store = await openShopStore(database);
    const key = (await grantFirstKey(store, undefined)) ?? "";
    const { app } = await buildApp({ config, store });
    const url = `${await app.listen({ port: 0 })}/v1/bits`;
    const headers = { authorization: `Bearer ${key}`, "content-type": "application/json" };
    const bit = await created(url, headers);
    const turns: { singly: number; together: number }[] = [];
    for (let turn = 0; turn <= TURNS; turn += 1) {
      const singly = await commitsPerSecond(store.commit, bit, turn);
      const together = await createsPerSecond(url, headers);
      // The first turn warms up.
      if (turn > 0) turns.push({ singly, together });
    }
    await app.close();
    await store.close();
    const together = middle(turns.map((turn) => turn.together)).toFixed(0);
    const singly = middle(turns.map((turn) => turn.singly)).toFixed(0);
    const ratios = turns.map((turn) => turn.together / turn.singly);
    return (
      `Durable creates over HTTP, ${CLIENTS} clients in a thread of their own: ${together} a second; ` +
      `single commits of the same record, one at a time, in turns with them: ${singly} a second; ` +
      `ratio ${middle(ratios).toFixed(2)}, from ${Math.min(...ratios).toFixed(2)} to ${Math.max(...ratios).toFixed(2)}`
    );
  } finally {
    rmSync(folder, { recursive: true });
  }
}

export function middle(values: readonly number[]): number {
  return [...values].sort((one, other) => one - other)[Math.floor(values.length / 2)] ?? Number.NaN;
}

type Commit = Store["commit"];
type BitRecord = Parameters<typeof creation<typeof bitKind>>[1];

/** A bit as the service itself makes it. */
async function created(url: string, headers: Record<string, string>): Promise<BitRecord> {
  const answer = await fetch(url, { method: "POST", body: JSON.stringify(BIT), headers });
  if (answer.status !== 201) throw new Error(`${url} ${await answer.text()}`);
  return Object(await answer.json());
}

async function commitsPerSecond(commit: Commit, bit: BitRecord, turn: number): Promise<number> {
  const started = process.hrtime.bigint();
  const until = started + BigInt(SECONDS * 1e9);
  let count = 0;
  for (; process.hrtime.bigint() < until; count += 1) {
    const record = { ...bit, id: `bit_${hex(turn, 8)}${hex(count, 24)}` };
    const stamp = { by: "system", at: record.createdAt, requestId: "bench" };
    const result = await commit({ stamp, changes: [creation(bitKind, record)] });
    if (result.kind !== "committed") throw new Error(result.kind);
  }
  return count / (Number(process.hrtime.bigint() - started) / 1e9);
}

function hex(count: number, length: number): string {
  return count.toString(16).padStart(length, "0");
}

export async function createsPerSecond(
  url: string,
  headers: Record<string, string>,
  connections = CLIENTS,
): Promise<number> {
  const run = autocannon({
    url,
    method: "POST",
    body: JSON.stringify(BIT),
    headers,
    duration: SECONDS,
    connections,
    workers: 1,
  });
  const [result]: { requests: { average: number }; non2xx: number }[] = await once(run, "done");
  if (result === undefined || result.non2xx > 0) throw new Error(`${url} refused some requests`);
  return result.requests.average;
}
