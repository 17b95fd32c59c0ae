import pg, { type Client } from "pg";
import { DatabaseFileError } from "../database-file-error.ts";
import type { Address } from "./address.ts";

/** Locks of this kind say who has a shop open. The number is ours. */
const PRESENCE = 7_241_502;

/** Says on a connection that a service has the shop open, as long as the connection lasts. Throws when it is being moved. */
export async function bePresent(client: Client, schema: string): Promise<void> {
  if (await locked(client, "pg_try_advisory_lock_shared", schema)) return;
  throw new DatabaseFileError("this shop is being moved. Start the service when that has come to its end.");
}

/** Keeps every service away as long as the connection lasts. Throws when one has the shop open. */
export async function takeAlone(client: Client, schema: string): Promise<void> {
  if (await locked(client, "pg_try_advisory_lock", schema)) return;
  throw new DatabaseFileError(`The shop in the schema ${schema} is in use. Stop its services first.`);
}

/** Throws when a service has the shop open. */
export async function requireUnusedShop({ pool, schema }: Address): Promise<void> {
  const client = new pg.Client(pool);
  await client.connect();
  try {
    await takeAlone(client, schema);
    // Given back before the connection ends: the server notices that later.
    await locked(client, "pg_advisory_unlock", schema);
  } finally {
    await client.end();
  }
}

async function locked(client: Client, lock: string, schema: string): Promise<boolean> {
  const { rows } = await client.query<{ is_held: boolean }>(`SELECT ${lock}($1, hashtext($2)) AS is_held`, [
    PRESENCE,
    schema,
  ]);
  return rows[0]?.is_held === true;
}
