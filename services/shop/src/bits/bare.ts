import type { Bit } from "@rimwise/domain";
import { BitInputSchema, type BitRecord } from "./schema.ts";

const FIELDS = Object.keys(BitInputSchema.properties);

/** A kept bit without what no plan depends on. */
export function bareBit(record: BitRecord): Bit {
  return Object(Object.fromEntries(Object.entries(record).filter(([name]) => FIELDS.includes(name))));
}
