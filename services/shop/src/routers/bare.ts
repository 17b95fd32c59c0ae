import type { Router } from "@rimwise/domain";
import { withoutUndefined } from "../http/given.ts";
import type { RouterRecord } from "./schema.ts";

/** A kept router without what no plan depends on. */
export function bareRouter(record: RouterRecord): Router {
  const { minRpm, maxRpm, dial, inputPowerW, colletDiametersMm } = record;
  return withoutUndefined({ minRpm, maxRpm, dial, inputPowerW, colletDiametersMm });
}
