import { describe, expect, test } from "vitest";
import { openInMemoryStore, planOf } from "../../testing/in-memory-store.ts";
import { describeOnSqlite } from "../../testing/one-engine.ts";
import { openOwnStore } from "../../testing/own-store.ts";
import { keyKind } from "../keys/kind.ts";
import { proveHistory } from "../proof/prove.ts";
import { newRecord } from "../store/changes.ts";
import { type EventFilter, eventPage, events, latestBehind } from "./reads.ts";

/** Hours of the events in order: the clock is set back at the fourth and far ahead at the sixth. */
const HOURS = [8, 9, 11, 10, 11, 20, 12, 13, 13, 14];
const at = (hour: number) => `2026-03-02T${String(hour).padStart(2, "0")}:00:00.000Z`;

/** A store with one event an hour, made in turn by two callers, of two types. */
async function storeWith(hours: readonly number[]) {
  const { store } = await openOwnStore();
  for (const [index, hour] of hours.entries()) {
    const stamp = { by: `key_${index % 2}`, at: at(hour), requestId: `r-${index}` };
    const fields = { name: "Wall", role: "member", keySha256: digest(index) } as const;
    const record = newRecord(`key_${index}`, fields, stamp.at);
    const event = { type: index % 3 === 0 ? "key.created" : "key.revoked", data: { index } };
    await store.commit({ stamp, changes: [{ action: "create", kind: keyKind, record, event }] });
  }
  const page = (after: number, most: number, filter?: EventFilter) =>
    store.answer(events.page(after, most, filter));
  return { answer: store.answer, page };
}

function digest(index: number): string {
  return index.toString(16).padStart(64, "0");
}

describe("the feed", () => {
  const times = [undefined, 7, 8, 9, 10, 11, 12, 13, 14, 15, 20, 21].map((hour) =>
    hour === undefined ? undefined : at(hour),
  );

  test("finds by time what lies in the window, whatever the clock did, and in order of sequence", async () => {
    const { page } = await storeWith(HOURS);
    for (const since of times) {
      for (const until of times) {
        const found = (await page(0, 100, { since, until })).map(({ sequence }) => sequence);
        const wanted = HOURS.flatMap((hour, index) => {
          const isIn = at(hour) >= (since ?? "") && at(hour) < (until ?? "9");
          return isIn ? [index + 1] : [];
        });
        expect(found, `${since} to ${until}`).toEqual(wanted);
      }
    }
  });

  test("narrows by all that is asked for at once, and goes on after a sequence", async () => {
    const { page } = await storeWith(HOURS);
    const all = await page(0, 100);
    const filter = { by: "key_0", type: "key.revoked", since: at(9) };
    const wanted = all.filter(
      (event) => event.by === filter.by && event.type === filter.type && event.at >= filter.since,
    );
    expect(wanted.length).toBeGreaterThan(2);
    expect(await page(0, 100, filter)).toEqual(wanted);
    expect(await page(wanted[0]?.sequence ?? 0, 1, filter)).toEqual(wanted.slice(1, 2));
    expect(await page(0, 100, { subjectId: "key_4", by: "key_0" })).toEqual(all.slice(4, 5));
    expect(await page(0, 100, { subjectId: "key_4", by: "key_1" })).toEqual([]);
  });

  describeOnSqlite("PostgreSQL chooses by how much is in the table", () => {
    test.each([
      [{}, "INTEGER PRIMARY KEY"],
      [{ since: "x", until: "y" }, "INTEGER PRIMARY KEY"],
      [{ subjectId: "x" }, "INDEX events_by_subject"],
      [{ subjectId: "x", by: "y", type: "z", since: "s" }, "INDEX events_by_subject"],
      [{ by: "x" }, "INDEX events_by_key"],
      [{ type: "x", until: "y" }, "INDEX events_by_type"],
      [{ by: "x", type: "y", since: "s", until: "u" }, "INDEX events_by_key_and_type"],
    ] satisfies [EventFilter, string][])("of %j goes along %s, and sorts nothing", (filter, index) => {
      const { sqlite } = openInMemoryStore();
      const steps = planOf(sqlite, eventPage(filter));
      expect(steps).toHaveLength(1);
      expect(steps[0]).toContain(`SEARCH events USING ${index} (`);
      expect(steps[0]).toMatch(/(sequence|rowid)>\? AND (sequence|rowid)<\?\)$/);
    });

    test("finds the end of a window without looking through the events", () => {
      const { sqlite } = openInMemoryStore();
      expect(planOf(sqlite, latestBehind)).toEqual([
        "SEARCH events USING COVERING INDEX events_behind (at<?)",
      ]);
    });
  });
});

describe("the proof", () => {
  test("of a history whose clock went back and forth finds it intact, in as many parts as it takes", async () => {
    const { answer } = await storeWith(HOURS);
    const sources = { answer, verify: async () => ({ kind: "not-signed" }) as const };
    const whole = await proveHistory(1, 100, sources);
    expect(whole).toMatchObject({ isIntact: true, checked: 10, lastSequence: 10, nextSequence: null });
    const parts = [];
    for (let from: number | null = 1; from !== null; ) {
      const part = await proveHistory(from, 4, sources);
      parts.push([part.firstSequence, part.checked, part.nextSequence]);
      from = part.nextSequence;
    }
    expect(parts).toEqual([
      [1, 4, 5],
      [5, 4, 9],
      [9, 2, null],
    ]);
    expect(await proveHistory(1, 10, sources)).toMatchObject({ checked: 10, nextSequence: null });
  });
});
