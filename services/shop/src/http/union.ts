import Type, { type TSchema, type TUnsafe } from "typebox";

/**
 * One of several components, told apart by one property. It is written to the wire as it is: looking for the component that fits
 * would validate every answer.
 */
export function unionOf<Answer>(
  $id: string,
  propertyName: string,
  branches: readonly (TSchema & { readonly $id?: string })[],
  description: string,
): TUnsafe<Answer> {
  const oneOf = branches.map((branch) => ({ $ref: `${branch.$id}#` }));
  return Type.Unsafe<Answer>({ $id, type: "object", discriminator: { propertyName }, oneOf, description });
}
