import { randomUUID } from "node:crypto";
import pg from "pg";

/** The environment variable that says on which server tests keep their shops. Only `pnpm test:postgresql` sets it. */
export const SERVER = "TEST_POSTGRESQL_SERVER";

/** The server that tests run on; undefined when they run on SQLite. */
export function serverUnderTest(): string | undefined {
  return process.env[SERVER];
}

/** The URL of a new shop's database on a server: a schema of its own. */
export function newSchema(server: string, parameters = "pool_size=6"): string {
  return `${server}&schema=shop_${randomUUID().replaceAll("-", "")}&${parameters}`;
}

/** Removes a shop's schema with everything in it. */
export async function dropSchema(url: string): Promise<void> {
  const { searchParams, pathname, username } = new URL(url);
  const client = new pg.Client({
    host: searchParams.get("host") ?? "",
    user: username,
    database: pathname.slice(1),
  });
  await client.connect();
  try {
    await client.query("SET client_min_messages = warning");
    await client.query(`DROP SCHEMA IF EXISTS "${searchParams.get("schema")}" CASCADE`);
  } finally {
    await client.end();
  }
}
