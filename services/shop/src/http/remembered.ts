/** Look-ups that are remembered as long as nothing was committed. */
export type Remembered<Value> = {
  /** What was found before and still holds; undefined when it must be looked up. */
  readonly recall: (asked: string) => Value | undefined;
  readonly look: (asked: string) => Promise<Value>;
};

/** More than these are not remembered: a caller who asks for ever new things must not fill the memory. */
const MOST_REMEMBERED = 1000;

/**
 * Remembers what `look` found until the store's mark is another one. Nobody who asks after a change was acknowledged gets
 * what was before it. Without a mark nothing is remembered.
 */
export function remembered<Value extends object>(
  look: (asked: string) => Promise<Value>,
  mark: (() => number) | undefined,
): Remembered<Value> {
  const found = new Map<string, Value>();
  let markOfFound = mark?.();

  function forgetIfChanged(): number | undefined {
    const now = mark?.();
    if (now !== markOfFound || found.size >= MOST_REMEMBERED) found.clear();
    markOfFound = now;
    return now;
  }

  return {
    recall: (asked) => {
      forgetIfChanged();
      return found.get(asked);
    },
    look: async (asked) => {
      const before = forgetIfChanged();
      const value = await look(asked);
      if (before !== undefined && before === mark?.()) found.set(asked, value);
      return value;
    },
  };
}
