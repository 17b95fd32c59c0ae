import { describe, expect, test } from "vitest";
import { openInMemoryStore } from "../../testing/in-memory-store.ts";
import { newBit, STAMP } from "../../testing/new-bit.ts";
import { describeOnSqlite } from "../../testing/one-engine.ts";
import { openOwnStore } from "../../testing/own-store.ts";
import { bitKind } from "../bits/kind.ts";
import { bits as records } from "../bits/reads.ts";
import { events as history } from "../events/reads.ts";
import { creation, nextVersion, replacement } from "../store/changes.ts";
import type { Change, KeptAnswer, WriteBatch } from "../store/port.ts";
import type { Store } from "../store/store.ts";

const ANSWER: KeptAnswer = {
  scope: "key_1 POST /v1/bits",
  idempotencyKey: "once",
  fingerprint: "f",
  status: 201,
  headers: { Location: "/v1/bits/bit_1" },
  body: "{}",
  expiresAt: "2026-03-03T08:00:00.000Z",
};

const expected = (id: string, version: number) => ({ kind: bitKind, id, version });

async function openEmpty() {
  return doorsOf((await openOwnStore()).store);
}

function doorsOf(store: Store) {
  const { answer } = store;
  const commit = (changes: readonly Change[], rest: Partial<WriteBatch> = {}) =>
    store.commit({ stamp: STAMP, changes, ...rest });
  return {
    ...store,
    commit,
    bits: async () => (await answer(records.page("", 100))).map(({ id }) => id),
    find: (id: string) => answer(records.find(id)),
    events: async () => (await answer(history.page(0, 100))).map(({ subjectId }) => subjectId),
  };
}

describe("the one door for writes", () => {
  test("writes all changes of a batch with their events, or none", async () => {
    const { commit, bits, events } = await openEmpty();
    const first = newBit("bit_1");
    expect(await commit([...first.changes, ...newBit("bit_2").changes])).toEqual({ kind: "committed" });
    const stale = replacement(bitKind, { ...first.record, version: 7 }, nextVersion(first.record, STAMP.at));
    const result = await commit([...newBit("bit_3").changes, stale, ...newBit("bit_4").changes]);
    expect(result).toEqual({ kind: "stale", noun: "bit", id: "bit_1", version: 1 });
    expect(await bits()).toEqual(["bit_1", "bit_2"]);
    expect(await events()).toEqual(["bit_1", "bit_2"]);
  });

  test("lets the batches of one group stand or fall each by itself", async () => {
    const { commit, bits, events } = await openEmpty();
    const results = await Promise.allSettled([
      commit([...newBit("bit_1").changes]),
      commit([...newBit("bit_1").changes]),
      commit([...newBit("bit_2").changes]),
      commit([...newBit("bit_3").changes], { expects: [expected("bit_2", 2)] }),
      commit([...newBit("bit_4").changes], { expects: [expected("bit_9", 1)] }),
      commit([...newBit("bit_5").changes], { expects: [expected("bit_2", 1)] }),
    ]);
    expect(results.map((each) => (each.status === "fulfilled" ? each.value.kind : "failed"))).toEqual([
      "committed",
      "conflict",
      "committed",
      "stale",
      "gone",
      "committed",
    ]);
    expect(await bits()).toEqual(["bit_1", "bit_2", "bit_5"]);
    expect(await events()).toEqual(["bit_1", "bit_2", "bit_5"]);
  });

  test("takes what a batch streams once, whatever becomes of the others", async () => {
    const { commit, bits, events } = await openEmpty();
    const streamed = (function* () {
      yield* newBit("bit_1").changes;
      yield* newBit("bit_2").changes;
    })();
    const results = await Promise.all([
      commit([], { streamed }),
      commit([...newBit("bit_3").changes], { expects: [expected("bit_9", 1)] }),
    ]);
    expect(results.map(({ kind }) => kind)).toEqual(["committed", "gone"]);
    expect(await bits()).toEqual(["bit_1", "bit_2"]);
    expect(await events()).toEqual(["bit_1", "bit_2"]);
  });

  describeOnSqlite("its file can be made full", () => {
    test("acknowledges nothing of a group that the disk has no room for, and goes on when it has", async () => {
      const { store, sqlite } = openInMemoryStore();
      const { commit, bits, events } = doorsOf(store);
      const pages = Number(sqlite.pragma("page_count", { simple: true }));
      sqlite.pragma(`max_page_count = ${pages}`);
      const many = Array.from({ length: 40 }, (_, index) => `bit_${String(index).padStart(2, "0")}`);
      const full = await Promise.allSettled(many.map((id) => commit([...newBit(id).changes])));
      expect(new Set(full.map((each) => each.status === "rejected" && each.reason.code))).toEqual(
        new Set(["SQLITE_FULL"]),
      );
      expect([await bits(), await events()]).toEqual([[], []]);
      sqlite.pragma(`max_page_count = ${pages * 10}`);
      await Promise.all(many.map((id) => commit([...newBit(id).changes])));
      expect(await bits()).toEqual(many);
    });
  });

  test("keeps an answer with its changes, and refuses to make them a second time", async () => {
    const { commit, bits, findAnswer } = await openEmpty();
    expect(await commit([...newBit("bit_1").changes], { answer: ANSWER })).toEqual({ kind: "committed" });
    expect(await commit([...newBit("bit_2").changes], { answer: ANSWER })).toEqual({ kind: "answered" });
    expect(await findAnswer(ANSWER.scope, ANSWER.idempotencyKey)).toEqual(ANSWER);
    expect(await bits()).toEqual(["bit_1"]);
    const stale = { expects: [expected("bit_1", 9)] };
    await commit([], { ...stale, answer: { ...ANSWER, idempotencyKey: "other" } });
    expect(await findAnswer(ANSWER.scope, "other")).toBeUndefined();
  });

  test("forgets a field that is absent from the next version", async () => {
    const { commit, find } = await openEmpty();
    const { record } = newBit("bit_1");
    const full = { ...record, massG: 340, notes: "heavy" };
    await commit([creation(bitKind, full)]);
    await commit([replacement(bitKind, full, nextVersion(record, STAMP.at))]);
    expect(await find("bit_1")).toEqual({ ...record, version: 2 });
  });

  test("rings for what is on the disk, and for nothing else", async () => {
    const { commit, bell } = await openEmpty();
    await commit([...newBit("bit_1").changes]);
    expect(bell.rings()).toBe(1);
    await commit([...newBit("bit_2").changes], { expects: [expected("bit_1", 9)] });
    await commit([]);
    expect(bell.rings()).toBe(1);
  });
});
