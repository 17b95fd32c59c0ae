import { describe, expect, test } from "vitest";
import { count } from "../../services/shop/testing/behind-the-service.ts";
import { expectWhole } from "../../services/shop/testing/whole.ts";
import { builtService } from "../running/built-service.ts";
import { exited, start, temporaryDatabase } from "../running/service-process.ts";
import { BIT } from "./bit.ts";

/** `pnpm faults` tries many more times. */
const ROUNDS = Number(process.env["KILL_ROUNDS"] ?? 3);
/** Writes acknowledged between one kill and the next, different in each round. */
const APART = [15, 45, 90, 7, 33, 120, 1];
const TIME_LIMIT_MS = 120_000 + ROUNDS * 10_000;

describe("a process that is killed with kill -9 amid acknowledged creates", {
  timeout: TIME_LIMIT_MS,
}, () => {
  test("has every acknowledged bit when it starts again, each with its event, and no half of another", async () => {
    const file = temporaryDatabase();
    const built = [await builtService()];
    let service = await start(built, file);
    const { key } = service;
    const acknowledged = new Set<string>();
    for (let round = 0; round < ROUNDS; round += 1) {
      const killAfter = acknowledged.size + (APART[round % APART.length] ?? 1);
      const createUntilGone = async () => {
        for (;;) {
          const response = await create(service.url, key).catch(() => undefined);
          if (response?.status !== 201) return;
          const { id }: { id: string } = await response.json();
          acknowledged.add(id);
          if (acknowledged.size >= killAfter) service.process.kill("SIGKILL");
        }
      };
      await Promise.all(Array.from({ length: 8 }, createUntilGone));
      await exited(service);
      service = await start(built, file);
      expect(service.key, "a database that has a key is given no other").toBe(key);
      const found = await allIds(service.url, key);
      expect([...acknowledged].filter((id) => !found.has(id))).toEqual([]);
    }
    service.process.kill("SIGTERM");
    expect(await exited(service)).toBe(0);
    expect(acknowledged.size).toBeGreaterThanOrEqual(150);

    await expectWhole(file);
    expect(await count({ file }, "bits")).toBe(await count({ file }, "events WHERE type = 'bit.created'"));
  });
});

function create(url: string, key: string): Promise<Response> {
  return fetch(`${url}/v1/bits`, {
    method: "POST",
    headers: { authorization: `Bearer ${key}`, "content-type": "application/json" },
    body: JSON.stringify(BIT),
  });
}

async function allIds(url: string, key: string): Promise<Set<string>> {
  const ids = new Set<string>();
  let cursor: string | null = "";
  while (cursor !== null) {
    const response = await fetch(`${url}/v1/bits?limit=200${cursor && `&cursor=${cursor}`}`, {
      headers: { authorization: `Bearer ${key}` },
    });
    const page: { data: { id: string }[]; nextCursor: string | null } = await response.json();
    for (const { id } of page.data) ids.add(id);
    cursor = page.nextCursor;
  }
  return ids;
}
