/** What may be done at one station, and what was the last there, numbered so that more done has a higher number. State 0: nothing. */
export type StationStates = {
  readonly members: readonly number[];
  readonly count: number;
  /** By state: which set-ups of the day are done here, as bits. */
  readonly doneBits: Int32Array;
  /** By state: which was the last; −1 if nothing is done. */
  readonly last: Int32Array;
  /** By `state · members + member`: the state when that member is done next. */
  readonly after: Int32Array;
};

/** How many states a station with so many set-ups has: each set of them with each of it as the last one, and nothing. */
export function stateCount(members: number): number {
  return members * 2 ** (members - 1) + 1;
}

/** The states of a station with these set-ups. */
export function stationStates(members: readonly number[]): StationStates {
  const size = members.length;
  const count = stateCount(size);
  // The first state of each set of members; those with its other members as the last one follow.
  const firstState = new Int32Array(2 ** size);
  for (let set = 1, state = 1; set < firstState.length; set += 1) {
    firstState[set] = state;
    state += countOfBits(set);
  }
  const stateOf = (set: number, member: number) =>
    (firstState[set] ?? 0) + countOfBits(set & ((1 << member) - 1));
  const states = {
    members,
    count,
    doneBits: new Int32Array(count),
    last: new Int32Array(count).fill(-1),
    after: new Int32Array(count * size),
  };
  for (let set = 0; set < firstState.length; set += 1) {
    const doneBits = members.reduce((bits, place, member) => bits | (((set >> member) & 1) << place), 0);
    for (let last = set === 0 ? -1 : 0; last < size; last += 1) {
      if (last >= 0 && ((set >> last) & 1) === 0) continue;
      const state = last < 0 ? 0 : stateOf(set, last);
      states.doneBits[state] = doneBits;
      states.last[state] = members[last] ?? -1;
      for (let next = 0; next < size; next += 1) {
        states.after[state * size + next] = stateOf(set | (1 << next), next);
      }
    }
  }
  return states;
}

function countOfBits(set: number): number {
  let count = 0;
  for (let rest = set; rest !== 0; rest &= rest - 1) count += 1;
  return count;
}
