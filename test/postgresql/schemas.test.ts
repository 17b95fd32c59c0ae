import { expect, test } from "vitest";
import { behindTheService } from "../../services/shop/testing/behind-the-service.ts";
import { openInMemoryStore } from "../../services/shop/testing/in-memory-store.ts";
import { describeOnPostgresql } from "../../services/shop/testing/one-engine.ts";
import { openOwnStore } from "../../services/shop/testing/own-store.ts";
import { type Schema, schemaOfPostgresql, schemaOfSqlite } from "./schema-of.ts";

/** What only PostgreSQL has: who writes, what its processes have counted, and what SQLite keeps in its word index, which knows an order. */
const OF_ITS_OWN = [/^writing\b/, /^request_counts\b/, /^bits\.terms /, /^bits \(blocks_of/];

const without = (lines: readonly string[]) =>
  lines.filter((line) => !OF_ITS_OWN.some((own) => own.test(line)));

describeOnPostgresql("the migrations of both engines make", () => {
  async function bothSchemas(): Promise<readonly [sqlite: Schema, postgresql: Schema]> {
    const { sqlite } = openInMemoryStore();
    const rows = async (sql: string) => sqlite.prepare<[], Record<string, unknown>>(sql).all();
    return [await schemaOfSqlite({ rows }), await behindTheService(await openOwnStore(), schemaOfPostgresql)];
  }

  test("the same tables with the same columns of the same kinds, required and computed alike", async () => {
    const [sqlite, postgresql] = await bothSchemas();
    expect(sqlite.columns.length).toBeGreaterThan(250);
    expect(without(postgresql.columns)).toEqual(sqlite.columns);
  });

  test("the same indexes, of the same columns in the same order, unique and for the same rows alike", async () => {
    const [sqlite, postgresql] = await bothSchemas();
    expect(sqlite.indexes.length).toBeGreaterThan(90);
    expect(without(postgresql.indexes)).toEqual(sqlite.indexes);
  });
});
