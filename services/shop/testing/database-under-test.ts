import { randomUUID } from "node:crypto";
import pg from "pg";
import { openShopStore } from "../src/rooms/store.ts";

/** The environment variable that says on which server tests keep their shops. Only `pnpm test:postgresql` sets it. */
export const SERVER = "TEST_POSTGRESQL_SERVER";

/** The server that tests run on; undefined when they run on SQLite. */
export function serverUnderTest(): string | undefined {
  return process.env[SERVER];
}

/** Schemas that are migrated and empty: to empty one takes a tenth of the time of making it. */
const empty: string[] = [];

/** The URL of a new shop's database on a server: a schema of its own. */
export function newSchema(server: string, parameters = "pool_size=6"): string {
  return urlOf(server, empty.pop() ?? newName(), parameters);
}

/** What each schema that nobody has tampered with is made of. */
let whole: Promise<string> | undefined;

/** Takes a shop's schema back with everything in it: emptied for another test, or dropped when a test has changed how it is made. */
export async function freeSchema(url: string): Promise<void> {
  const schema = new URL(url).searchParams.get("schema") ?? "";
  const client = clientOf(url);
  await client.connect();
  try {
    whole ??= shapeOfNew(url, client);
    if ((await shapeOf(client, schema)) === (await whole)) {
      await client.query(emptying(schema));
      empty.push(schema);
    } else {
      await drop(client, schema);
    }
  } finally {
    await client.end();
  }
}

async function shapeOfNew(url: string, client: pg.Client): Promise<string> {
  const schema = newName();
  await (await openShopStore(urlOf(url.replace(/&schema=.*/, ""), schema, "pool_size=2"))).close();
  const shape = await shapeOf(client, schema);
  await drop(client, schema);
  return shape;
}

/** How many relations, columns and triggers there are, and which migrations made them. */
async function shapeOf(client: pg.Client, schema: string): Promise<string> {
  const { rows } = await client.query<{ shape: string }>(
    `SELECT concat_ws(' ', count(*), sum(relnatts), sum(relchecks), sum(relhastriggers::int)) AS shape
     FROM pg_class JOIN pg_namespace AS named ON named.oid = relnamespace WHERE nspname = $1 AND relpersistence = 'p' AND relkind <> 't'`,
    [schema],
  );
  const shape = rows[0]?.shape ?? "";
  if (!(await hasLedger(client, schema))) return shape;
  const applied = await client.query<{ names: string }>(
    `SELECT string_agg(name, ' ' ORDER BY name) AS names FROM "${schema}".migrations`,
  );
  return `${shape} ${applied.rows[0]?.names}`;
}

async function hasLedger(client: pg.Client, schema: string): Promise<boolean> {
  const { rows } = await client.query<{ is_there: boolean }>(
    "SELECT to_regclass($1) IS NOT NULL AS is_there",
    [`"${schema}".migrations`],
  );
  return rows[0]?.is_there === true;
}

/** Tables that a new schema has rows in stay as they are. */
function emptying(schema: string): string {
  return `DO $$ DECLARE name TEXT; is_filled BOOLEAN; BEGIN
    SET LOCAL session_replication_role = replica;
    FOR name IN SELECT tablename FROM pg_tables WHERE schemaname = '${schema}'
      AND tablename NOT IN ('migrations', 'derivations', 'writing') LOOP
      EXECUTE format('SELECT EXISTS (SELECT 1 FROM %I.%I)', '${schema}', name) INTO is_filled;
      IF is_filled THEN EXECUTE format('TRUNCATE %I.%I', '${schema}', name); END IF;
    END LOOP;
    PERFORM setval(pg_get_serial_sequence('${schema}.bits', 'number'), 1, FALSE);
  END $$`;
}

async function drop(client: pg.Client, schema: string): Promise<void> {
  await client.query("SET client_min_messages = warning");
  await client.query(`DROP SCHEMA IF EXISTS "${schema}" CASCADE`);
}

function urlOf(server: string, schema: string, parameters: string): string {
  return `${server}&schema=${schema}&${parameters}`;
}

function newName(): string {
  return `shop_${randomUUID().replaceAll("-", "")}`;
}

function clientOf(url: string): pg.Client {
  const { searchParams, pathname, username } = new URL(url);
  return new pg.Client({
    host: searchParams.get("host") ?? "",
    user: username,
    database: pathname.slice(1),
  });
}
