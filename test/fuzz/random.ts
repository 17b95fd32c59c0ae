/** Choices that follow from a seed alone. */
export type Random = {
  /** A whole number from 0 to below this one. */
  readonly below: (bound: number) => number;
  readonly of: <Value>(values: readonly Value[]) => Value;
  /** True so many times in a hundred. */
  readonly percent: (chance: number) => boolean;
};

/** Marsaglia's xorshift with 32 bits ("Xorshift RNGs", 2003): good enough to choose, and the same everywhere. */
export function randomFrom(seed: number): Random {
  let state = Math.imul(seed + 1, 0x9e3779b1) | 1;
  const below = (bound: number) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % bound;
  };
  return {
    below,
    of: (values) => {
      const value = values[below(values.length)];
      if (value === undefined) throw new Error("there is nothing to choose from");
      return value;
    },
    percent: (chance) => below(100) < chance,
  };
}
