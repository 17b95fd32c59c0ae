import type { Router } from "@rimwise/domain";
import { RouterInputSchema, type RouterRecord } from "./schema.ts";

const FIELDS = Object.keys(RouterInputSchema.properties);

/** A kept router without what no plan depends on. */
export function bareRouter(record: RouterRecord): Router {
  return Object(Object.fromEntries(Object.entries(record).filter(([name]) => FIELDS.includes(name))));
}
