import { MigrationError, openShopStore } from "@rimwise/shop";
import { behindTheService } from "../../services/shop/testing/behind-the-service.ts";
import type { World } from "./world.ts";

const EXPANDS = "9998-of-a-newer-program.sql";
const CONTRACTS = "9999-of-a-newer-program-contract.sql";

/**
 * Lets something be done while a newer program has migrated the database beside this one. With a migration that only adds something this
 * program goes on; with one that takes something away it says that it cannot. It does not start on either, and finds the database as it
 * was when they are undone. Throws otherwise.
 */
export async function withNewerSchema<Result>(world: World, act: () => Promise<Result>): Promise<Result> {
  const { database } = world;
  const change = (sql: string) => behindTheService({ file: database }, ({ run }) => run(sql));
  await change(`ALTER TABLE bits ADD COLUMN of_a_newer_program TEXT; ${ledgerLine(EXPANDS)}`);
  await isReady(world, true);
  const result = await act();
  await change(ledgerLine(CONTRACTS));
  await isReady(world, false);
  await world.restart(async () => {
    await refusesToStart(database);
    await change(`DELETE FROM migrations WHERE name = '${CONTRACTS}'`);
    await refusesToStart(database);
    await change(
      `DELETE FROM migrations WHERE name = '${EXPANDS}'; ALTER TABLE bits DROP COLUMN of_a_newer_program`,
    );
  });
  return result;
}

function ledgerLine(name: string): string {
  return `INSERT INTO migrations (name, sha256, applied_at) VALUES ('${name}', '${"0".repeat(64)}', '2026-03-02T08:00:00.000Z')`;
}

async function isReady(world: World, should: boolean): Promise<void> {
  const { status, body } = await world.ask({ method: "GET", url: "/readyz" });
  const isRight = should ? status === 200 : status === 503 && String(body.reason).includes(CONTRACTS);
  if (!isRight)
    throw new Error(`on the schema of a newer program it is ${status} ready: ${JSON.stringify(body)}`);
}

async function refusesToStart(database: string): Promise<void> {
  const refusal: unknown = await openShopStore(database).then(
    (store) => store.close(),
    (error: unknown) => error,
  );
  if (!(refusal instanceof MigrationError) || !refusal.message.includes("newer"))
    throw new Error(`a database of a newer program was opened: ${String(refusal)}`);
}
