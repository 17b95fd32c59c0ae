import type { Question } from "../store/query.ts";
import { bits } from "./reads.ts";
import type { BitRecord } from "./schema.ts";

/** The number and the name that the shop knows a bit by, so that two of one name can be told apart. */
export function* calledWithNumber({ id, name }: Pick<BitRecord, "id" | "name">): Question<string> {
  const number = yield* bits.shopNumberOf(id);
  return number === undefined ? name : `No. ${number}, ${name}`;
}
