import { sql } from "drizzle-orm";
import { expect, test } from "vitest";
import { newBit, STAMP } from "../../../testing/new-bit.ts";
import { describeOnPostgresql } from "../../../testing/one-engine.ts";
import { openOwnStore } from "../../../testing/own-store.ts";
import { all, type Query, type Question } from "../query.ts";

const query = (text: string): Query<unknown> => ({ build: () => sql.raw(text), read: ([value]) => value });
const COUNT = query('SELECT count(*) FROM "bits"');
const WAIT = query("SELECT pg_sleep(0.3)");
const ANYTHING = query("SELECT random()");

describeOnPostgresql("a question of several queries", () => {
  test("sees one moment, whatever is written between them", async () => {
    const { store } = await openOwnStore();
    function* twice(): Question<unknown[]> {
      const before = yield* all(COUNT);
      yield* all(WAIT);
      return [...before, ...(yield* all(COUNT))];
    }
    const counting = store.answer(twice());
    await new Promise((resolve) => setTimeout(resolve, 100));
    await store.commit({ stamp: STAMP, changes: newBit("bit_1").changes });
    expect(await counting).toEqual([0, 0]);
    expect(await store.answer(twice())).toEqual([1, 1]);
  });

  test("sees one moment also when its like have taken one query so far, or says that it does not", async () => {
    const { store } = await openOwnStore();
    function* times(count: number, each: Query<unknown>): Question<number> {
      for (let asked = 0; asked < count; asked += 1) yield* all(each);
      return count;
    }
    for (let turn = 0; turn < 5; turn += 1) expect(await store.answer(times(1, COUNT))).toBe(1);
    expect(await store.answer(times(2, COUNT))).toBe(2);
    function* others(count: number): Question<number> {
      return yield* times(count, ANYTHING);
    }
    for (let turn = 0; turn < 5; turn += 1) expect(await store.answer(others(1))).toBe(1);
    await expect(store.answer(others(2))).rejects.toMatchObject({ code: "STORE_BUSY" });
    expect(await store.answer(others(2)), "from then on in a transaction").toBe(2);
  });
});
