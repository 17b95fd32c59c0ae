import { expect, test } from "vitest";
import { openInMemoryStore, planOf } from "../../testing/in-memory-store.ts";
import { describeOnSqlite } from "../../testing/one-engine.ts";
import { bitsWastingGroove } from "./reads.ts";

describeOnSqlite("PostgreSQL chooses by how much is in the table", () => {
  test("the bits that take the wood out of a groove are read by their index, the widest first, without sorting", () => {
    const { sqlite } = openInMemoryStore();
    expect(planOf(sqlite, bitsWastingGroove)).toEqual([
      "SEARCH bits USING INDEX bits_by_groove_they_waste (wastes_groove_mm<?)",
    ]);
  });
});
