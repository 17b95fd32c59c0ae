import { expect, test } from "vitest";
import { behindTheService, copyRow, numbersTo } from "../../testing/behind-the-service.ts";
import { openInMemoryStore, planOf } from "../../testing/in-memory-store.ts";
import { newBit, STAMP } from "../../testing/new-bit.ts";
import { describeOnSqlite } from "../../testing/one-engine.ts";
import { openOwnStore } from "../../testing/own-store.ts";
import { bits, bitsWastingGroove } from "./reads.ts";

describeOnSqlite("PostgreSQL chooses by how much is in the table", () => {
  test("the bits that take the wood out of a groove are read by their index, the widest first, without sorting", () => {
    const { sqlite } = openInMemoryStore();
    expect(planOf(sqlite, bitsWastingGroove)).toEqual([
      "SEARCH bits USING INDEX bits_by_groove_they_waste (wastes_groove_mm<?)",
    ]);
  });
});

/** More than an engine sorts at once. */
const MANY = 2500;
const PAGE = 400;

test("a word that thousands of bits have, and one that some have, are found page by page, each bit once and in order", async () => {
  const { store, file } = await openOwnStore();
  await store.commit({ stamp: STAMP, changes: newBit("bit_0").changes });
  await behindTheService({ file }, (database) =>
    copyRow(
      database,
      "bits",
      "bit_0",
      { id: "'bit_' || n", words: "'everywhere ' || CASE WHEN n % 5 = 0 THEN 'fifth' ELSE 'other' END" },
      { from: numbersTo(MANY) },
    ),
  );
  for (const [word, count] of [
    ["everywhere", MANY],
    ["fifth", MANY / 5],
    ["nowhere", 0],
  ] as const) {
    const match = { words: [word], anyOfFacets: [] };
    const found: number[] = [];
    for (let after = 0; ; ) {
      const page = await store.answer(bits.search(after, PAGE, { match }));
      found.push(...page.map(({ number }) => number));
      after = found.at(-1) ?? 0;
      if (page.length < PAGE) break;
    }
    expect(found, word).toHaveLength(count);
    expect(found).toEqual([...new Set(found)].sort((one, other) => one - other));
  }
});
