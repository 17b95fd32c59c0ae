import { createHash } from "node:crypto";
import { describe, expect, test } from "vitest";
import { behindTheService } from "../../services/shop/testing/behind-the-service.ts";
import { openShop, PANEL_BIT } from "./shop.ts";
import { sortedJson } from "./sorted-json.ts";

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
  test("say who changed what, when and in which request", async () => {
    const { ask, bit } = await shopWithHistory();
    const { body } = await ask("GET", "/v1/events?after=2");
    expect(body.data.map(({ type }: Event) => type)).toEqual(["bit.created", "bit.changed", "bit.removed"]);
    const [created, changed, removed] = body.data;
    expect(created).toMatchObject({ subjectId: bit.id, subjectVersion: 1, data: { after: bit } });
    expect(created.by).toBe((await ask("GET", "/v1/me")).body.keyId);
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
    const first = await ask("GET", "/v1/events?limit=4");
    expect(first.body.nextCursor).toBe("4");
    expect(first.headers["link"]).toBe('</v1/events?limit=4&after=4>; rel="next"');
    const rest = await ask("GET", `/v1/events?limit=4&after=${first.body.nextCursor}`);
    expect(rest.body.data.map(({ sequence }: Event) => sequence)).toEqual([5]);
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
    await behindTheService(await shopWithHistory(), async ({ run }) => {
      await expect(run("UPDATE events SET by = 'nobody'")).rejects.toThrow(/append-only/);
      await expect(run("DELETE FROM events")).rejects.toThrow(/append-only/);
    });
  });
});

type Summary = { by: string; byName: string | null; count: number; changes: object[] };

describe("the reason of a change", () => {
  test("is on every event of its request, and in its hash", async () => {
    const { ask } = await openShop();
    const reason = { "Change-Reason": encodeURIComponent("Neu – für Füllungen") };
    const { body: bit } = await ask("POST", "/v1/bits", { body: PANEL_BIT, headers: reason });
    await ask("PATCH", `/v1/bits/${bit.id}`, { body: { wings: 3 }, headers: { "If-Match": '"1"' } });
    const { body } = await ask("GET", `/v1/events?subjectId=${bit.id}`);
    const [created, changed] = body.data;
    expect(created.why).toBe("Neu – für Füllungen");
    expect(changed).not.toHaveProperty("why");
    const { hash, ...content } = created;
    expect(createHash("sha256").update(sortedJson(content)).digest("hex")).toBe(hash);
  });

  test("that cannot be kept is refused before anything is done", async () => {
    const { ask } = await openShop();
    const { body: bit } = await ask("POST", "/v1/bits", { body: PANEL_BIT });
    const url = `/v1/bits/${bit.id}`;
    const headers = { "If-Match": '"1"', "Change-Reason": "100%" };
    for (const answer of [
      await ask("POST", "/v1/bits", { body: PANEL_BIT, headers }),
      await ask("PATCH", url, { body: { wings: 3 }, headers }),
      await ask("DELETE", url, { headers }),
      await ask("POST", "/v1/signing-keys/rotate", { headers }),
    ]) {
      expect(answer.status).toBe(422);
      expect(answer.body.errors).toMatchObject([{ in: "header", pointer: "/Change-Reason" }]);
    }
    expect((await ask("GET", url)).body).toEqual(bit);
    expect((await ask("GET", "/v1/signing-keys")).body.data).toHaveLength(1);
  });
});

describe("the feed narrowed", () => {
  /** One event an hour from eight o'clock: a manager's key, an instructor's, and a bit of each, the second one changed. */
  async function shopThroughTheDay() {
    let hour = 8;
    const shop = await openShop({}, () => new Date(Date.UTC(2026, 2, 2, hour)));
    const { body: key } = await shop.ask("POST", "/v1/keys", { body: { name: "Tutor", role: "instructor" } });
    hour = 9;
    const { body: first } = await shop.ask("POST", "/v1/bits", { body: PANEL_BIT });
    hour = 10;
    const { body: bit } = await shop.ask("POST", "/v1/bits", { body: PANEL_BIT, key: key.key });
    hour = 11;
    const change = { body: { wings: 3 }, headers: { "If-Match": '"1"' }, key: key.key };
    await shop.ask("PATCH", `/v1/bits/${bit.id}`, change);
    const { body: me } = await shop.ask("GET", "/v1/me");
    return { ...shop, instructor: String(key.id), manager: String(me.keyId), first, bit };
  }

  test("lists what was changed since a time, by whom, of which kind, on which record", async () => {
    const { ask, instructor, manager, bit } = await shopThroughTheDay();
    const found = async (query: string) =>
      (await ask("GET", `/v1/events?${query}`)).body.data.map(({ sequence }: Event) => sequence);
    expect(await found(`by=${instructor}`)).toEqual([5, 6]);
    expect(await found(`by=${manager}&type=bit.created`)).toEqual([4]);
    expect(await found("type=bit.created&after=4")).toEqual([5]);
    expect(await found(`subjectId=${bit.id}`)).toEqual([5, 6]);
    expect(await found(`subjectId=${bit.id}&by=${manager}`)).toEqual([]);
    expect(await found("since=2026-03-02T10:00:00Z&until=2026-03-02T11:00:00Z")).toEqual([5]);
    expect(await found("since=2026-03-02T12%3A00%3A00%2B01:00&type=bit.changed")).toEqual([6]);
    expect(await found("until=2026-03-02T08:00:00Z&type=bit.created")).toEqual([]);
  });

  test("keeps what it is narrowed by in the link to the next page", async () => {
    const { ask, instructor } = await shopThroughTheDay();
    const { headers, body } = await ask("GET", `/v1/events?by=${instructor}&limit=1`);
    expect(headers["link"]).toBe(`</v1/events?by=${instructor}&limit=1&after=5>; rel="next"`);
    const next = await ask("GET", `/v1/events?by=${instructor}&limit=1&after=${body.nextCursor}`);
    expect(next.body.data.map(({ sequence }: Event) => sequence)).toEqual([6]);
    expect(next.body.nextCursor).toBeNull();
  });

  test.each([
    ["since=yesterday", "/since"],
    ["until=2026-13-01T00:00:00Z", "/until"],
    ["since=2016-12-31T23:59:60Z", "/since"],
    ["since=2026-03-02T10:00:00Z&until=2026-03-02T09:00:00Z", "/until"],
    ["by=", "/by"],
    ["kind=bit", "/kind"],
  ])("%s is refused by name", async (query, pointer) => {
    const { ask } = await openShop();
    const answer = await ask("GET", `/v1/events?${query}`);
    expect(answer.status).toBe(422);
    expect(answer.body.errors).toMatchObject([{ in: "query", pointer }]);
  });

  test("sums up who changed which kinds of records how often", async () => {
    const { ask, instructor, manager } = await shopThroughTheDay();
    const { body } = await ask(
      "GET",
      "/v1/events/summary?since=2026-03-02T08:00:00Z&until=2026-03-02T12:00:00Z",
    );
    expect(body).toMatchObject({ since: "2026-03-02T08:00:00.000Z", until: "2026-03-02T12:00:00.000Z" });
    const callers: Summary[] = body.callers;
    expect(callers.find(({ by }) => by === instructor)).toEqual({
      by: instructor,
      byName: "Tutor",
      count: 2,
      changes: [
        { record: "bit", type: "bit.changed", count: 1 },
        { record: "bit", type: "bit.created", count: 1 },
      ],
    });
    expect(callers.find(({ by }) => by === manager)).toMatchObject({ byName: "First manager", count: 2 });
    const usual = await ask("GET", "/v1/events/summary");
    expect(usual.body).toMatchObject({
      since: "2026-02-23T11:00:00.000Z",
      until: "2026-03-02T11:00:00.000Z",
    });
    expect(usual.body.callers.find(({ by }: Summary) => by === instructor).count, "the end is not part").toBe(
      1,
    );
  });

  test("sums up no more than 31 days", async () => {
    const { ask } = await shopThroughTheDay();
    const sum = (query: string) => ask("GET", `/v1/events/summary?${query}`);
    expect((await sum("since=2026-01-30T11:00:00Z")).status).toBe(200);
    const long = await sum("since=2026-01-30T10:59:59Z");
    expect(long.status).toBe(422);
    expect(long.body.errors).toMatchObject([{ in: "query", pointer: "/since" }]);
    expect((await sum("since=2027-01-01T00:00:00Z")).body.errors).toMatchObject([{ pointer: "/since" }]);
  });
});

describe("a clock that is set back", () => {
  test("changes neither the order of events nor what a follower sees, and the history stays intact", async () => {
    let now = new Date("2026-03-02T10:00:00Z");
    const { ask } = await openShop({}, () => now);
    const add = async (time: string) => {
      now = new Date(time);
      expect((await ask("POST", "/v1/bits", { body: PANEL_BIT })).status).toBe(201);
    };
    await add("2026-03-02T10:00:00Z");
    await add("2020-01-01T00:00:00Z");
    const { body: seen } = await ask("GET", "/v1/events?limit=3");
    await add("2026-03-02T10:00:01Z");
    const { body: rest } = await ask("GET", `/v1/events?after=${seen.nextCursor}`);
    expect(rest.data.map(({ sequence, at }: Event) => [sequence, at])).toEqual([
      [4, "2020-01-01T00:00:00.000Z"],
      [5, "2026-03-02T10:00:01.000Z"],
    ]);
    const { body: old } = await ask("GET", "/v1/events?until=2021-01-01T00:00:00Z");
    expect(old.data.map(({ sequence }: Event) => sequence)).toEqual([4]);
    expect((await ask("POST", "/v1/events/verify", { body: {} })).body.isIntact).toBe(true);
  });
});
