import { openStore } from "../store/open.ts";
import type { Store } from "../store/store.ts";
import { SHAPE } from "./shape.ts";

/** Opens the database of a shop with everything that the rooms keep in it: a SQLite file, or `:memory:`. */
export function openShopStore(database: string, now?: () => Date): Promise<Store> {
  return openStore(database, SHAPE, now);
}
