import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import { openShopStore } from "../src/rooms/store.ts";
import type { Store } from "../src/store/store.ts";
import { newDatabase } from "./behind-the-service.ts";

/** A new shop's store for one test on the engine under test, with where its database is and a folder beside it. */
export async function openOwnStore(): Promise<{
  readonly store: Store;
  readonly file: string;
  readonly folder: string;
}> {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-store-"));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  const file = newDatabase(folder);
  const store = await openShopStore(file);
  onTestFinished(store.close);
  return { store, file, folder };
}
