import type { Mark } from "../store/store.ts";

/** What was found, for as long as the store's mark is the same. */
export type Remembered<Value> = {
  /** What was found and holds at this mark; undefined when it must be looked up. */
  readonly recall: (mark: Mark, asked: string) => Value | undefined;
  /** Keeps what was looked up after the mark was read. */
  readonly keep: (mark: Mark, asked: string, value: Value) => void;
  /** Goes on with what was found at one mark at another one, between which nothing changed that it rests on. */
  readonly advance: (from: Mark, to: Mark) => void;
  /** Whether something was found at any mark. */
  readonly has: (asked: string) => boolean;
};

/** More than these are not remembered: a caller who asks for ever new things must not fill the memory. */
const MOST_REMEMBERED = 1000;

/**
 * Remembers what was found until the store's mark is another one. Nobody who asks after a change was acknowledged gets what was
 * before it: their mark was read later. That what is kept under a mark may be newer than it does no harm, because then nobody reads
 * that mark any more but those whose question was under way meanwhile.
 */
export function remembered<Value extends object>(): Remembered<Value> {
  const found = new Map<string, Value>();
  let markOfFound: Mark | undefined;
  return {
    recall: (mark, asked) => (mark === markOfFound ? found.get(asked) : undefined),
    keep: (mark, asked, value) => {
      if (mark !== markOfFound || found.size >= MOST_REMEMBERED) found.clear();
      markOfFound = mark;
      found.set(asked, value);
    },
    advance: (from, to) => {
      if (from === markOfFound) markOfFound = to;
    },
    has: (asked) => found.has(asked),
  };
}
