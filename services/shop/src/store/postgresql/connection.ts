import pg, { type Pool, type PoolClient, type QueryConfig, type QueryResult, type QueryResultRow } from "pg";
import { UnavailableError } from "../unavailable-error.ts";

/** A connection of the pool. Throws an UnavailableError when the server is not there, or all are in use for too long. */
export async function connectionOf(pool: Pool): Promise<PoolClient> {
  try {
    return await pool.connect();
  } catch (error) {
    if (isOfServer(error)) throw error;
    const areAllInUse = pool.totalCount >= (pool.options.max ?? 0) && pool.waitingCount > 0;
    throw new UnavailableError(error, areAllInUse ? "STORE_BUSY" : "STORE_UNAVAILABLE");
  }
}

/** Whether it is the server itself that says so, and no lost connection. */
export function isOfServer(error: unknown): boolean {
  return error instanceof pg.DatabaseError;
}

/** One statement on a connection of the pool. Throws an UnavailableError when the connection is lost. */
export async function query<Row extends QueryResultRow>(
  pool: Pool,
  statement: string | QueryConfig,
): Promise<QueryResult<Row>> {
  const client = await connectionOf(pool);
  let broken: Error | undefined;
  try {
    return await client.query<Row>(statement);
  } catch (error) {
    if (isOfServer(error)) throw error;
    broken = new UnavailableError(error);
    throw broken;
  } finally {
    client.release(broken);
  }
}
