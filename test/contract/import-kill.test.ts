import { once } from "node:events";
import { setTimeout as pause } from "node:timers/promises";
import { describe, expect, test } from "vitest";
import { count } from "../../services/shop/testing/behind-the-service.ts";
import { expectWhole } from "../../services/shop/testing/whole.ts";
import { builtService } from "../running/built-service.ts";
import { type Running, start, temporaryDatabase } from "../running/service-process.ts";
import { CSV, manyStraights } from "./import-files.ts";

const KEY = "a-long-enough-first-key-of-the-invented-shop";
const ROWS = 1000;
const FILE = manyStraights(ROWS);

describe("a service killed with kill -9 amid an import", { timeout: 240_000 }, () => {
  test("all or nothing, has all of it or nothing of it, and is whole", async () => {
    const lastsMs = await timeOfOneImport();
    const seen: number[] = [];
    for (const share of [0.05, 0.5, 0.9, 0.97]) {
      const file = temporaryDatabase();
      const service = await started(file);
      const answer = send(service, "all-or-nothing");
      await pause(share * lastsMs);
      await kill(service);
      const status = await answer;
      const bits = await count({ file }, "bits");
      seen.push(bits);
      expect([0, ROWS]).toContain(bits);
      if (status === 200) expect(bits).toBe(ROWS);
      expect(await count({ file }, "imports")).toBe(bits / ROWS);
      const created = "events WHERE type IN ('bit.created', 'import.created')";
      expect(await count({ file }, created)).toBe(bits + bits / ROWS);
      await expectWhole(file);
    }
    expect(seen, "one was killed before its end").toContain(0);
  });

  test("row by row, has whole rows, and knows the file again", async () => {
    const file = temporaryDatabase();
    const service = await started(file);
    const answer = send(service, "row-by-row");
    while ((await count({ file }, "bits")) === 0) await pause(20);
    await kill(service);
    expect(await answer).toBeUndefined();
    const bits = await count({ file }, "bits");
    expect(bits).toBeLessThan(ROWS);
    expect(await count({ file }, "events WHERE type = 'bit.created'")).toBe(bits);
    await expectWhole(file);
    const again = await started(file);
    expect(await send(again, "row-by-row")).toBe(409);
    expect(await count({ file }, "bits")).toBe(bits);
    await kill(again);
  });
});

async function timeOfOneImport(): Promise<number> {
  const service = await started(temporaryDatabase());
  const startedAt = performance.now();
  expect(await send(service, "all-or-nothing")).toBe(200);
  const lastsMs = performance.now() - startedAt;
  await kill(service);
  return lastsMs;
}

/** The status, or undefined if no answer came. */
async function send({ url }: Running, mode: string): Promise<number | undefined> {
  const response = await fetch(`${url}/v1/bits/import?mode=${mode}`, {
    method: "POST",
    headers: { authorization: `Bearer ${KEY}`, "content-type": CSV },
    body: FILE,
  }).catch(() => undefined);
  return response?.status;
}

async function started(file: string): Promise<Running> {
  return start([await builtService()], file, { RIMWISE_FIRST_KEY: KEY });
}

async function kill({ process: child }: Running): Promise<void> {
  const exited = once(child, "exit");
  child.kill("SIGKILL");
  await exited;
}
