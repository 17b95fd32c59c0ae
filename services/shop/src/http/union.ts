import Type, { type TUnsafe } from "typebox";
import { ref } from "./reference.ts";
import type { Component } from "./routes.ts";

/**
 * One of several components, told apart by one property. It is written to the wire as it is: looking for the component that fits
 * would validate every answer.
 */
export function unionOf<Answer>(
  $id: string,
  propertyName: string,
  branches: readonly Component[],
  description: string,
): TUnsafe<Answer> {
  const oneOf = branches.map((branch) => ref(branch));
  return Type.Unsafe<Answer>({ $id, type: "object", discriminator: { propertyName }, oneOf, description });
}
