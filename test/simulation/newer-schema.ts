import { MigrationError, openShopStore } from "@rimwise/shop";
import { behindTheService } from "../../services/shop/testing/behind-the-service.ts";

const NEWER = "9999-of-a-newer-program.sql";

/** A newer program has been at the database: this one must refuse it, say so, and find it as it was when that is undone. */
export async function refusesNewerSchema(database: string): Promise<void> {
  const change = (sql: string) => behindTheService({ file: database }, ({ run }) => run(sql));
  await change(
    `INSERT INTO migrations (name, sha256, applied_at) VALUES ('${NEWER}', '${"0".repeat(64)}', '2026-03-02T08:00:00.000Z')`,
  );
  const refusal: unknown = await openShopStore(database).then(
    (store) => store.close(),
    (error: unknown) => error,
  );
  await change(`DELETE FROM migrations WHERE name = '${NEWER}'`);
  if (!(refusal instanceof MigrationError) || !refusal.message.includes("newer"))
    throw new Error(`a database of a newer program was opened: ${String(refusal)}`);
}
