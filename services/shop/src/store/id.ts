import { v7 } from "uuid";

/** A new id such as `bit_0192…`: the prefix says what it names, the rest (UUID version 7, RFC 9562) sorts by time. */
export function newId(prefix: string): string {
  return `${prefix}_${v7().replaceAll("-", "")}`;
}
