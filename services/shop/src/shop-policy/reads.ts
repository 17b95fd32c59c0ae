import type { PolicyLayer } from "@rimwise/domain";
import type { Database } from "../store/database.ts";
import { recordQueries } from "../store/record-reads.ts";
import { SHOP_POLICY_ID } from "./schema.ts";

/** What the shop tightens just now, for what is decided inside a transaction and outside. */
export function shopLayerQuery(database: Database): () => PolicyLayer {
  const { find } = recordQueries(database, "shop-policy");
  return () => find(SHOP_POLICY_ID)?.layer ?? {};
}
