import pg, { type Pool, type PoolClient } from "pg";
import { UnavailableError } from "../unavailable-error.ts";

/** A connection of the pool. Throws an UnavailableError when the server is not there, or all are in use for too long. */
export async function connectionOf(pool: Pool): Promise<PoolClient> {
  try {
    return await pool.connect();
  } catch (error) {
    throw isOfServer(error) ? error : new UnavailableError(error);
  }
}

/** Whether it is the server itself that says so, and no lost connection. */
export function isOfServer(error: unknown): boolean {
  return error instanceof pg.DatabaseError;
}
