/** Which of some numbered things are in: 32 to a word. */
export type BitSet = Uint32Array;

const WORD = 32;

export function emptySet(size: number): BitSet {
  return new Uint32Array(Math.ceil(size / WORD));
}

export function add(set: BitSet, index: number): void {
  const word = index >>> 5;
  set[word] = (set[word] ?? 0) | (1 << (index & 31));
}

/** The first so many things, of sets of this size. */
export function firstOf(count: number, size: number): BitSet {
  const set = emptySet(size);
  for (let index = 0; index < count; index += 1) add(set, index);
  return set;
}

export function has(set: BitSet, index: number): boolean {
  return (((set[index >>> 5] ?? 0) >>> (index & 31)) & 1) === 1;
}

/** Whether everything of one is in another. */
export function isSubset(one: BitSet, other: BitSet): boolean {
  for (let word = 0; word < one.length; word += 1) {
    if (((one[word] ?? 0) & ~(other[word] ?? 0)) !== 0) return false;
  }
  return true;
}

/** What is in one and not in another. */
export function without(one: BitSet, other: BitSet): BitSet {
  return one.map((word, index) => word & ~(other[index] ?? 0));
}

/** How many of one are in another too. */
export function sharedCount(one: BitSet, other: BitSet): number {
  let count = 0;
  for (let word = 0; word < one.length; word += 1) count += onesIn((one[word] ?? 0) & (other[word] ?? 0));
  return count;
}

export function countOf(set: BitSet): number {
  return sharedCount(set, set);
}

/** The members in rising order. */
export function membersOf(set: BitSet): number[] {
  const members: number[] = [];
  for (let index = 0; index < set.length * WORD; index += 1) if (has(set, index)) members.push(index);
  return members;
}

/** The ones in a word, by adding neighbours in pairs, fours and bytes (a standard method). */
function onesIn(word: number): number {
  const pairs = word - ((word >>> 1) & 0x55555555);
  const fours = (pairs & 0x33333333) + ((pairs >>> 2) & 0x33333333);
  return Math.imul((fours + (fours >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}
