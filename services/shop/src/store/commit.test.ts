import { sql } from "drizzle-orm";
import { describe, expect, onTestFinished, test } from "vitest";
import { createBit } from "../bits/decide.ts";
import { bitReads } from "../bits/reads.ts";
import { eventReads } from "../events/reads.ts";
import { nextVersion, replacement } from "./changes.ts";
import { openStore } from "./open.ts";
import type { Change, KeptAnswer, Order } from "./port.ts";

const STAMP = { by: "key_1", at: "2026-03-02T08:00:00.000Z", requestId: "r-1" };

const ANSWER: KeptAnswer = {
  scope: "key_1 POST /v1/bits",
  idempotencyKey: "once",
  fingerprint: "f",
  status: 201,
  headers: { Location: "/v1/bits/bit_1" },
  body: "{}",
  expiresAt: "2026-03-03T08:00:00.000Z",
};

function newBit(id: string) {
  const bit = {
    name: id,
    form: { kind: "straight", diameterMm: 12, cuttingLengthMm: 30 },
    shankDiameterMm: 12,
    wings: 2,
  } as const;
  return createBit(id, bit, STAMP.at);
}

function openEmpty() {
  const store = openStore(":memory:");
  onTestFinished(store.close);
  const commit = (changes: readonly Change[], rest: Partial<Order> = {}) =>
    store.commit({ stamp: STAMP, changes, ...rest });
  const { page: bits, find } = bitReads(store.database);
  const events = async () =>
    (await eventReads(store.database).page(0, 100)).map(({ subjectId }) => subjectId);
  return { ...store, commit, bits: async () => (await bits("", 100)).map(({ id }) => id), find, events };
}

describe("the one door for writes", () => {
  test("writes all changes of an order with their events, or none", async () => {
    const { commit, bits, events } = openEmpty();
    const first = newBit("bit_1");
    expect(await commit([first.change, newBit("bit_2").change])).toEqual({ kind: "committed" });
    const stale = replacement("bit", { ...first.record, version: 7 }, nextVersion(first.record, STAMP.at));
    const outcome = await commit([newBit("bit_3").change, stale, newBit("bit_4").change]);
    expect(outcome).toEqual({ kind: "stale", type: "bit", id: "bit_1", version: 1 });
    expect(await bits()).toEqual(["bit_1", "bit_2"]);
    expect(await events()).toEqual(["bit_1", "bit_2"]);
  });

  test("lets the orders of one group stand or fall each by itself", async () => {
    const { commit, bits, events } = openEmpty();
    const outcomes = await Promise.allSettled([
      commit([newBit("bit_1").change]),
      commit([newBit("bit_1").change]),
      commit([newBit("bit_2").change]),
      commit([newBit("bit_3").change], { expects: [{ type: "bit", id: "bit_2", version: 2 }] }),
      commit([newBit("bit_4").change], { expects: [{ type: "bit", id: "bit_9", version: 1 }] }),
      commit([newBit("bit_5").change], { expects: [{ type: "bit", id: "bit_2", version: 1 }] }),
    ]);
    expect(outcomes.map((each) => (each.status === "fulfilled" ? each.value.kind : "failed"))).toEqual([
      "committed",
      "moved",
      "committed",
      "stale",
      "gone",
      "committed",
    ]);
    expect(await bits()).toEqual(["bit_1", "bit_2", "bit_5"]);
    expect(await events()).toEqual(["bit_1", "bit_2", "bit_5"]);
  });

  test("takes what an order streams once, whatever becomes of the others", async () => {
    const { commit, bits, events } = openEmpty();
    const streamed = (function* () {
      yield newBit("bit_1").change;
      yield newBit("bit_2").change;
    })();
    const outcomes = await Promise.all([
      commit([], { streamed }),
      commit([newBit("bit_3").change], { expects: [{ type: "bit", id: "bit_9", version: 1 }] }),
    ]);
    expect(outcomes.map(({ kind }) => kind)).toEqual(["committed", "gone"]);
    expect(await bits()).toEqual(["bit_1", "bit_2"]);
    expect(await events()).toEqual(["bit_1", "bit_2"]);
  });

  test("acknowledges nothing of a group that the disk has no room for, and goes on when it has", async () => {
    const { commit, bits, events, database } = openEmpty();
    const { page_count: pages } = database.get<{ page_count: number }>(sql`PRAGMA page_count`);
    database.get(sql.raw(`PRAGMA max_page_count = ${pages}`));
    const many = Array.from({ length: 40 }, (_, index) => `bit_${String(index).padStart(2, "0")}`);
    const full = await Promise.allSettled(many.map((id) => commit([newBit(id).change])));
    expect(new Set(full.map((each) => each.status === "rejected" && each.reason.code))).toEqual(
      new Set(["SQLITE_FULL"]),
    );
    expect([await bits(), await events()]).toEqual([[], []]);
    database.get(sql.raw(`PRAGMA max_page_count = ${pages * 10}`));
    await Promise.all(many.map((id) => commit([newBit(id).change])));
    expect(await bits()).toEqual(many);
  });

  test("keeps an answer with its changes, and refuses to make them a second time", async () => {
    const { commit, bits, findAnswer } = openEmpty();
    expect(await commit([newBit("bit_1").change], { answer: ANSWER })).toEqual({ kind: "committed" });
    expect(await commit([newBit("bit_2").change], { answer: ANSWER })).toEqual({ kind: "answered" });
    expect(await findAnswer(ANSWER.scope, ANSWER.idempotencyKey)).toEqual(ANSWER);
    expect(await bits()).toEqual(["bit_1"]);
    const stale = { expects: [{ type: "bit", id: "bit_1", version: 9 }] } as const;
    await commit([], { ...stale, answer: { ...ANSWER, idempotencyKey: "other" } });
    expect(await findAnswer(ANSWER.scope, "other")).toBeUndefined();
  });

  test("forgets a field that is left out of the next version", async () => {
    const { commit, find } = openEmpty();
    const { record, change } = newBit("bit_1");
    const full = { ...record, massG: 340, notes: "heavy" };
    await commit([{ ...change, record: full } as Change]);
    await commit([replacement("bit", full, nextVersion(record, STAMP.at))]);
    expect(await find("bit_1")).toEqual({ ...record, version: 2 });
  });
});
