/** The value that `make` gives, made when first asked for and then kept. */
export function lazily<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
