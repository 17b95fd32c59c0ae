import { type BitView, bitView, type SearchBit } from "../bit-view.ts";
import { greatestLeft, removedBy } from "../left.ts";
import type { MarkedTarget } from "../one-bit.ts";
import type { SearchSetting } from "../setting.ts";
import { type BitSet, firstOf } from "./bit-set.ts";
import { type Candidate, candidateOf, candidatesOf, slidingParts } from "./candidate.ts";
import { coversOf, undominated } from "./cover.ts";
import { type Cut, isMadeBy, missedBy, settingsOf } from "./union.ts";
import { firstWitnesses, MOST_WITNESSES, type Witness } from "./witness.ts";

/** Bits whose every candidate another bit's covers, by their ids. */
export type Dominated = { readonly bitId: string; readonly view: BitView; readonly byBitId: string };

export type Several = {
  readonly together: readonly (readonly SearchSetting[])[];
  readonly dominated: readonly Dominated[];
  readonly isComplete: boolean;
};

/** Answers given at most, and witnesses added at once for places that were missed. */
const ANSWERS_MOST = 10;
const ADDED_AT_ONCE = 16;

/** A target with its candidates; both grow more exact as places are found that covers miss. */
type Field = {
  readonly marked: MarkedTarget;
  readonly witnesses: readonly Witness[];
  readonly candidates: readonly Candidate[];
};

type Answer = { readonly cuts: readonly Cut[]; readonly leftMm: number };

/** The fewest set-ups, two to `setupsMax`, that make one of the targets together. */
export function searchSeveral(
  bits: readonly SearchBit[],
  targets: readonly MarkedTarget[],
  setupsMax: number,
  thicknessMm: number,
): Several {
  let fields = targets.map((marked) => fieldOf(bits, marked));
  let isComplete = true;
  for (let count = 2; count <= setupsMax; count += 1) {
    const searched = fields.map((field) => searchField(field, count));
    fields = searched.map(({ field }) => field);
    isComplete &&= searched.every((each) => each.isComplete);
    const together = searched.flatMap(({ field, answers }) =>
      answers.map(({ cuts, leftMm }) => ({ leftMm, cuts, target: field.marked.target })),
    );
    if (together.length === 0) continue;
    together.sort((one, other) => one.leftMm - other.leftMm);
    const best = together.slice(0, ANSWERS_MOST);
    return {
      together: best.map(({ target, cuts }) => settingsOf(target, cuts, thicknessMm)),
      dominated: dominatedOf(fields),
      isComplete,
    };
  }
  return { together: [], dominated: dominatedOf(fields), isComplete };
}

function fieldOf(bits: readonly SearchBit[], marked: MarkedTarget): Field {
  const { target, marks } = marked;
  const witnesses = firstWitnesses(target.need);
  const parts = slidingParts(target);
  const candidates = bits.flatMap((bit) =>
    target.presentations.flatMap((presentation) =>
      candidatesOf(bitView(bit, presentation, target.topMm), target, marks, parts, witnesses),
    ),
  );
  // Of equal ones the first is kept: the one with the widest margin.
  candidates.sort((one, other) => other.marginMm - one.marginMm);
  return { marked, witnesses, candidates };
}

/** The covers of a field by so many, each looked at exactly. If all of them miss some place, that becomes a witness, and they are sought again. */
function searchField(start: Field, count: number): { field: Field; answers: Answer[]; isComplete: boolean } {
  let field = start;
  for (;;) {
    const { target } = field.marked;
    const { kept } = undominated(setsOf(field));
    const some = kept.flatMap((index) => field.candidates[index] ?? []);
    const whole = firstOf(field.witnesses.length, MOST_WITNESSES);
    const { covers, isComplete } = coversOf(
      whole,
      some.map(({ covers }) => covers),
      count,
    );
    const sets = covers.map((cover) => cover.flatMap((index) => some[index] ?? []));
    const answers = sets.filter((cuts) => isMadeBy(target, cuts)).map((cuts) => answerOf(field, cuts));
    if (answers.length > 0 || sets.length === 0) return { field, answers, isComplete };
    const missed = sets.slice(0, ADDED_AT_ONCE).flatMap((cuts) => missedBy(target, cuts) ?? []);
    const witnesses = [...field.witnesses, ...missed];
    if (missed.length === 0 || witnesses.length > MOST_WITNESSES)
      return { field, answers, isComplete: false };
    field = {
      ...field,
      witnesses,
      candidates: field.candidates.flatMap(({ view, fit }) => candidateOf(view, fit, witnesses) ?? []),
    };
  }
}

/** The largest cut first: the others have the less to take. */
function answerOf({ marked: { target } }: Field, cuts: readonly Cut[]): Answer {
  const ordered = cuts
    .map((cut) => ({ cut, leftMm: greatestLeft(target.limit, removedBy([cut], target.topMm)).mm }))
    .sort((one, other) => one.leftMm - other.leftMm)
    .map(({ cut }) => cut);
  return { cuts: ordered, leftMm: greatestLeft(target.limit, removedBy(cuts, target.topMm)).mm };
}

/** Bits of which nothing is kept, with the bit that covers what their best would. */
function dominatedOf(fields: readonly Field[]): Dominated[] {
  const dominated = new Map<string, Dominated>();
  const taken = new Set<string>();
  for (const field of fields) {
    const { kept, by } = undominated(setsOf(field));
    for (const index of kept) taken.add(field.candidates[index]?.view.bit.id ?? "");
    for (const [index, byIndex] of by) {
      const one = field.candidates[index];
      const other = field.candidates[byIndex];
      if (one === undefined || other === undefined || one.view.bit.id === other.view.bit.id) continue;
      const bitId = one.view.bit.id;
      if (!dominated.has(bitId)) dominated.set(bitId, { bitId, view: one.view, byBitId: other.view.bit.id });
    }
  }
  return [...dominated.values()].filter(({ bitId }) => !taken.has(bitId));
}

function setsOf({ candidates }: Field): BitSet[] {
  return candidates.map(({ covers }) => covers);
}
