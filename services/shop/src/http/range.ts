/** A range of the domain as the bounds of a JSON Schema. */
export function within({ min, max }: { readonly min: number; readonly max: number }) {
  return { minimum: min, maximum: max };
}
