import { createHash } from "node:crypto";
import Database from "better-sqlite3";
import { describe, expect, test } from "vitest";
import { openShop, PANEL_BIT } from "./shop.ts";

type Event = Record<string, unknown> & { type: string; hash: string; previousHash: string };

async function shopWithHistory() {
  const shop = await openShop();
  const { body: bit } = await shop.ask("POST", "/v1/bits", { body: PANEL_BIT });
  const url = `/v1/bits/${bit.id}`;
  await shop.ask("PATCH", url, {
    body: { massG: 338.5, notes: null },
    headers: { "If-Match": '"1"', "X-Request-Id": "weighed-again" },
  });
  await shop.ask("DELETE", url, { headers: { "If-Match": '"2"' } });
  return { ...shop, bit };
}

describe("the events", () => {
  test("tell who changed what, when and in which request", async () => {
    const { ask, bit, managerKey } = await shopWithHistory();
    const { body } = await ask("GET", "/v1/events?after=1");
    expect(body.data.map(({ type }: Event) => type)).toEqual(["bit.created", "bit.changed", "bit.removed"]);
    const [created, changed, removed] = body.data;
    expect(created).toMatchObject({ subjectId: bit.id, subjectVersion: 1, data: { after: bit } });
    expect(created.by).toBe(`key_${managerKey.split("_")[1]}`);
    expect(changed).toMatchObject({ subjectVersion: 2, requestId: "weighed-again" });
    expect(changed.data.before).toEqual({
      massG: 340,
      notes: "Upper drawer.",
      version: 1,
      updatedAt: bit.updatedAt,
    });
    expect(changed.data.after).toEqual({ massG: 338.5, version: 2, updatedAt: changed.at });
    expect(removed.data.before).toMatchObject({ id: bit.id, massG: 338.5 });
  });

  test("are read on from the last one seen", async () => {
    const { ask } = await shopWithHistory();
    const first = await ask("GET", "/v1/events?limit=3");
    expect(first.body.nextCursor).toBe("3");
    expect(first.headers["link"]).toBe('</v1/events?limit=3&after=3>; rel="next"');
    const rest = await ask("GET", `/v1/events?limit=3&after=${first.body.nextCursor}`);
    expect(rest.body.data.map(({ sequence }: Event) => sequence)).toEqual([4]);
    expect(rest.body.nextCursor).toBeNull();
  });

  test("are chained: each hash can be computed from the event and the hash before it", async () => {
    const { ask } = await shopWithHistory();
    const { body } = await ask("GET", "/v1/events");
    const events: Event[] = body.data;
    let previousHash = "0".repeat(64);
    for (const { hash, ...content } of events) {
      expect(content.previousHash).toBe(previousHash);
      expect(hash).toBe(createHash("sha256").update(sortedJson(content)).digest("hex"));
      previousHash = hash;
    }
  });

  test("can be neither changed nor removed in the database", async () => {
    const { file } = await shopWithHistory();
    const database = new Database(file);
    expect(() => database.exec("UPDATE events SET by = 'nobody'")).toThrow(/append-only/);
    expect(() => database.exec("DELETE FROM events")).toThrow(/append-only/);
    database.close();
  });
});

/** JSON with sorted members, as RFC 8785 writes plain ASCII names and these numbers. */
function sortedJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(sortedJson).join(",")}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const members = Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1));
  return `{${members.map(([name, each]) => `${JSON.stringify(name)}:${sortedJson(each)}`).join(",")}}`;
}
