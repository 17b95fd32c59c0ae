import { DomainError } from "../../quantity/fault.ts";

/** The fault of a cut that this form of bit cannot make, with what can. */
export function unsuitable(suits: string): DomainError {
  return new DomainError([{ pointer: "/kind", code: "cut-does-not-suit-bit", values: { suits } }]);
}
