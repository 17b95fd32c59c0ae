import type { Fault } from "../../quantity/fault.ts";

/** A fault where a dimension is not smaller than what it must fit inside. */
export function mustStayUnder(pointer: string, given: number, below: number): Fault[] {
  return given < below ? [] : [{ pointer, code: "out-of-range", values: { given, below } }];
}
