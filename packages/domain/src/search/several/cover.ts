import type { Steps } from "../../quantity/steps.ts";
import { type BitSet, countOf, has, isSubset, membersOf, sharedCount, without } from "./bit-set.ts";

/** Covers of a set by so many of the given sets, as their indices in rising order, each once. */
export type Covers = { readonly covers: readonly (readonly number[])[]; readonly isComplete: boolean };

/** So many sets are tried before a search breaks off, and so many covers kept. */
const TRIED_MOST = 200_000;
const KEPT_MOST = 400;

/** So many sets are tried, or compared with those that are kept, in one step. */
const IN_ONE_STEP = 256;

/**
 * Every cover of `whole` by exactly `count` of the sets or fewer, by branch and bound: the member that fewest sets have is
 * covered first, by each of these in turn; what is left must not be more than the largest remaining sets could take.
 */
export function* coversOf(whole: BitSet, sets: readonly BitSet[], count: number): Steps<Covers> {
  const holders = holdersOf(whole, sets);
  const largest = Math.max(0, ...sets.map((set) => sharedCount(whole, set)));
  const found = new Map<string, readonly number[]>();
  let tried = 0;
  let isComplete = true;
  function* cover(left: BitSet, chosen: readonly number[]): Steps<void> {
    const rest = countOf(left);
    if (rest === 0) {
      const cover = [...chosen].sort((one, other) => one - other);
      found.set(cover.join(" "), cover);
      return;
    }
    const turns = count - chosen.length;
    if (turns === 0) return;
    const rarest = rarestMember(left, holders);
    const takers = rarest === undefined ? [] : (holders.get(rarest) ?? []);
    const taken = takers
      .map((index) => ({ index, size: sharedCount(left, sets[index] ?? left) }))
      .sort((one, other) => other.size - one.size);
    for (const { index, size } of taken) {
      if (tried >= TRIED_MOST || found.size >= KEPT_MOST) {
        isComplete = false;
        return;
      }
      tried += 1;
      if (size + (turns - 1) * largest < rest) return;
      if (tried % IN_ONE_STEP === 0) yield;
      yield* cover(without(left, sets[index] ?? left), [...chosen, index]);
    }
  }
  yield* cover(whole, []);
  return { covers: [...found.values()], isComplete };
}

/** The sets that are kept, and for each other one a kept one that contains it. */
export type Undominated = { readonly kept: readonly number[]; readonly by: ReadonlyMap<number, number> };

/** Of many sets those that no other one contains, by index; of equal ones the first. Larger ones are looked at first. */
export function* undominated(sets: readonly BitSet[]): Steps<Undominated> {
  const order = sets.map((set, index) => ({ index, set, size: countOf(set) }));
  order.sort((one, other) => other.size - one.size || one.index - other.index);
  const kept: { index: number; set: BitSet }[] = [];
  const by = new Map<number, number>();
  for (const [place, { index, set }] of order.entries()) {
    if (place % IN_ONE_STEP === IN_ONE_STEP - 1) yield;
    const larger = kept.find((each) => isSubset(set, each.set));
    if (larger === undefined) kept.push({ index, set });
    else by.set(index, larger.index);
  }
  return { kept: kept.map(({ index }) => index), by };
}

function holdersOf(whole: BitSet, sets: readonly BitSet[]): Map<number, number[]> {
  return new Map(
    membersOf(whole).map((member) => [
      member,
      sets.flatMap((set, index) => (has(set, member) ? [index] : [])),
    ]),
  );
}

/** The member of a set that fewest others hold. */
function rarestMember(left: BitSet, holders: ReadonlyMap<number, readonly number[]>): number | undefined {
  let rarest: number | undefined;
  let least = Infinity;
  for (const [member, { length }] of holders) {
    if (length >= least || !has(left, member)) continue;
    least = length;
    rarest = member;
  }
  return rarest;
}
