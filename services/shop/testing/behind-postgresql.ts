import { openShopStore } from "../src/rooms/store.ts";
import { readAddress } from "../src/store/postgresql/address.ts";
import { openPatientPool } from "../src/store/postgresql/pool.ts";
import type { Column, Database, Row } from "./database.ts";

/** A PostgreSQL schema, as a superuser of the server under test. */
export async function openPostgresql(url: string): Promise<Database> {
  const pool = openPatientPool(readAddress(url));
  const client = await pool.connect();

  async function rows(sql: string, values: readonly unknown[] = []): Promise<readonly Row[]> {
    const found = await client.query<Row>(values.length === 0 ? sql : { text: sql, values: [...values] });
    return found.rows;
  }

  async function run(sql: string, values: readonly unknown[] = []): Promise<void> {
    await rows(sql, values);
  }

  async function tables(): Promise<readonly string[]> {
    const found = await rows("SELECT tablename AS name FROM pg_tables WHERE schemaname = current_schema()");
    return found.map(({ name }) => String(name));
  }

  async function columns(table: string): Promise<readonly Column[]> {
    const found = await rows(
      `SELECT column_name AS name, is_nullable AS nullable FROM information_schema.columns
       WHERE table_schema = current_schema() AND table_name = $1 AND is_generated = 'NEVER' ORDER BY ordinal_position`,
      [table],
    );
    return found.map(({ name, nullable }) => ({ name: String(name), isRequired: nullable === "NO" }));
  }

  async function pastTriggers(act: () => Promise<void>): Promise<void> {
    await run("SET session_replication_role = replica");
    await act();
    await run("RESET session_replication_role");
  }

  return {
    run,
    rows,
    tables,
    columns,
    pastTriggers,
    drop: (names) => run(`DROP TABLE ${names.map((name) => `"${name}"`).join()} CASCADE`),
    copyTo: async (database) => {
      await (await openShopStore(database)).close();
      const { schema } = readAddress(database);
      await pastTriggers(async () => {
        for (const table of await tables()) {
          const names = (await columns(table)).map(({ name }) => `"${name}"`).join();
          await run(
            `TRUNCATE "${schema}"."${table}"; INSERT INTO "${schema}"."${table}" (${names}) SELECT ${names} FROM "${table}"`,
          );
        }
      });
      await run(
        `SELECT setval(pg_get_serial_sequence('"${schema}".bits', 'number'), (SELECT coalesce(max(number), 0) + 1 FROM bits), FALSE)`,
      );
    },
    close: async () => {
      client.release();
      await pool.end();
    },
  };
}
