/** Look-ups that are remembered as long as nothing was committed. */
export type Remembered<Value> = {
  /** What was found before and still holds; undefined when it must be looked up. */
  readonly recall: (asked: string) => Value | undefined;
  readonly look: (asked: string, find: () => Promise<Value>) => Promise<Value>;
};

/** More than these are not remembered: a caller who asks for ever new things must not fill the memory. */
const MOST_REMEMBERED = 1000;

/**
 * Remembers what was found until the store's mark is another one. Nobody who asks after a change was acknowledged gets
 * what was before it. Without a mark nothing is remembered, and never what is not `worthKeeping`.
 */
export function remembered<Value extends object>(
  mark: (() => number) | undefined,
  worthKeeping: (value: Value) => boolean = () => true,
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
    look: async (asked, find) => {
      const before = forgetIfChanged();
      const value = await find();
      if (before !== undefined && before === mark?.() && worthKeeping(value)) found.set(asked, value);
      return value;
    },
  };
}
