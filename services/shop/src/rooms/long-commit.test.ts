import { join } from "node:path";
import { setImmediate as nextTurn } from "node:timers/promises";
import { describe, expect, test } from "vitest";
import { newBit, STAMP } from "../../testing/new-bit.ts";
import { describeOnSqlite } from "../../testing/one-engine.ts";
import { openOwnStore } from "../../testing/own-store.ts";
import { bits as records } from "../bits/reads.ts";
import { events as history } from "../events/reads.ts";
import { replacement } from "../store/changes.ts";
import type { Change } from "../store/port.ts";
import type { Question } from "../store/query.ts";
import { openShopStore } from "./store.ts";

const MANY = 600;

async function openFile() {
  const { store, folder } = await openOwnStore();
  return {
    store,
    folder,
    commit: (changes: readonly Change[], streamed?: Iterable<Change>) =>
      store.commit({ stamp: STAMP, changes, ...(streamed && { streamed }) }),
    counts: () => store.answer(bitsAndEvents()),
  };
}

/** How many there are of each, at one moment. */
function* bitsAndEvents(): Question<readonly [bits: number, events: number]> {
  const bits = yield* records.page("", 2 * MANY);
  return [bits.length, (yield* history.page(0, 2 * MANY)).length];
}

function* manyBits(): Generator<Change> {
  for (let index = 0; index < MANY; index += 1) yield* newBit(`bit_${index}`).changes;
}

describe("a transaction that takes long", () => {
  test("lets others have their turn, who see nothing of it before its end, and write after it", async () => {
    const { commit, counts } = await openFile();
    await commit(newBit("bit_first").changes);
    const seen: (readonly [bits: number, events: number])[] = [];
    let isOver = false;
    const long = commit([], manyBits()).then((result) => {
      isOver = true;
      return result;
    });
    await nextTurn();
    const meanwhile = commit(newBit("bit_later").changes);
    while (!isOver) {
      seen.push(await counts());
      await nextTurn();
    }
    expect([await long, await meanwhile]).toEqual([{ kind: "committed" }, { kind: "committed" }]);
    expect(seen.length, "turns of others").toBeGreaterThan(5);
    // An engine elsewhere may have ended it before its answer is here.
    const whole = seen.findIndex(([bits]) => bits > 1);
    const before = seen.slice(0, whole === -1 ? seen.length : whole);
    expect(new Set(before.map(String))).toEqual(new Set(["1,1"]));
    for (const [bits, events] of seen.slice(before.length)) {
      expect(bits).toBeGreaterThan(MANY);
      expect(events).toBe(bits);
    }
    expect(await counts()).toEqual([MANY + 2, MANY + 2]);
  });

  test("leaves nothing if it is refused at its end, and those that wait go on", async () => {
    const { commit, counts } = await openFile();
    const { record, changes } = newBit("bit_first");
    await commit(changes);
    const wrong = replacement(records.kind, { ...record, version: 9 }, { ...record, version: 10 });
    const long = commit(
      [],
      (function* () {
        yield* manyBits();
        yield wrong;
      })(),
    );
    await nextTurn();
    const meanwhile = commit(newBit("bit_later").changes);
    expect(await long).toMatchObject({ kind: "stale", id: "bit_first" });
    expect(await meanwhile).toEqual({ kind: "committed" });
    expect(await counts()).toEqual([2, 2]);
  });

  test("is ended before the store closes", async () => {
    const { store, commit } = await openFile();
    const long = commit([], manyBits());
    await nextTurn();
    await nextTurn();
    await store.close();
    expect(await long).toEqual({ kind: "committed" });
  });

  describeOnSqlite("a copy of it is a file", () => {
    test("no copy has a part of it", async () => {
      const { store, folder, commit } = await openFile();
      const long = commit([], manyBits());
      await nextTurn();
      await nextTurn();
      const file = join(folder, "copy.sqlite");
      await store.copyTo?.(file);
      const copy = await openShopStore(file);
      const copied = (await copy.answer(records.page("", 2 * MANY))).length;
      await copy.close();
      expect([0, MANY]).toContain(copied);
      expect(await long).toEqual({ kind: "committed" });
    });
  });
});
