import Type, { type Static, type TSchema, type TUnsafe } from "typebox";

/** A reference to a named component that keeps its TypeScript type. */
export function ref<Schema extends TSchema & { readonly $id?: string }>(
  schema: Schema,
): TUnsafe<Static<Schema>> {
  return Type.Unsafe<Static<Schema>>({ $ref: `${schema.$id}#` });
}
