import { type BitView, bitView, type SearchBit } from "../bit-view.ts";
import { greatestLeft, removedBy } from "../left.ts";
import type { MarkedTarget } from "../one-bit.ts";
import type { SearchSetting } from "../setting.ts";
import type { Steps } from "../steps.ts";
import type { Target } from "../target.ts";
import { firstOf } from "./bit-set.ts";
import { type Candidate, candidateOf, candidatesOf, slidingParts } from "./candidate.ts";
import { coversOf, type Undominated, undominated } from "./cover.ts";
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

/** Candidates looked at again in one step. */
const IN_ONE_STEP = 256;

/** A target with its candidates; both grow more exact as places are found that covers miss. */
type Field = {
  readonly marked: MarkedTarget;
  readonly witnesses: readonly Witness[];
  readonly candidates: readonly Candidate[];
  readonly undominated: Undominated;
  readonly isComplete: boolean;
};

type Searched = { readonly field: Field; readonly answers: readonly Answer[]; readonly isComplete: boolean };

type Answer = { readonly cuts: readonly Cut[]; readonly leftMm: number };

/** The fewest set-ups, two to `setupsMax`, that make one of the targets together. */
export function* searchSeveral(
  bits: readonly SearchBit[],
  targets: readonly MarkedTarget[],
  setupsMax: number,
  thicknessMm: number,
): Steps<Several> {
  let fields: Field[] = [];
  if (setupsMax > 1) for (const marked of targets) fields.push(yield* fieldOf(bits, marked));
  let isComplete = fields.every((field) => field.isComplete);
  let together: (readonly SearchSetting[])[] = [];
  for (let count = 2; count <= setupsMax && together.length === 0; count += 1) {
    const searched: Searched[] = [];
    for (const field of fields) searched.push(yield* searchField(field, count));
    fields = searched.map(({ field }) => field);
    isComplete &&= searched.every((each) => each.isComplete);
    together = yield* bestOf(searched, thicknessMm);
  }
  return { together, dominated: dominatedOf(fields), isComplete };
}

function* fieldOf(bits: readonly SearchBit[], marked: MarkedTarget): Steps<Field> {
  const { target, marks } = marked;
  const witnesses = firstWitnesses(target.need);
  const parts = slidingParts(target);
  const candidates: Candidate[] = [];
  let isComplete = true;
  for (const bit of bits) {
    for (const presentation of target.presentations) {
      const view = bitView(bit, presentation, target.topMm);
      const found = candidatesOf(view, target, marks, parts, witnesses);
      candidates.push(...found.candidates);
      isComplete &&= found.isComplete;
    }
    yield;
  }
  // Of equal ones the first is kept: the one with the widest margin.
  candidates.sort((one, other) => other.marginMm - one.marginMm);
  return { marked, witnesses, candidates, undominated: yield* undominatedOf(candidates), isComplete };
}

/** The covers of a field by so many, each looked at exactly. If all of them miss some place, that becomes a witness, and they are sought again. */
function* searchField(start: Field, count: number): Steps<Searched> {
  let field = start;
  for (;;) {
    const { target } = field.marked;
    const some = field.undominated.kept.flatMap((index) => field.candidates[index] ?? []);
    const whole = firstOf(field.witnesses.length, MOST_WITNESSES);
    const { covers, isComplete } = yield* coversOf(
      whole,
      some.map(({ covers }) => covers),
      count,
    );
    const answers: Answer[] = [];
    const missed: Witness[] = [];
    for (const cover of covers) {
      const cuts = cover.flatMap((index) => some[index] ?? []);
      if (isMadeBy(target, cuts)) answers.push(answerOf(target, cuts));
      else if (missed.length < ADDED_AT_ONCE) missed.push(...missedBy(target, cuts));
      yield;
    }
    if (answers.length > 0 || covers.length === 0) return { field, answers, isComplete };
    const witnesses = [...field.witnesses, ...missed];
    if (missed.length === 0 || witnesses.length > MOST_WITNESSES) {
      return { field, answers, isComplete: false };
    }
    field = yield* withWitnesses(field, witnesses);
  }
}

/** The same field with more witnesses: what every candidate covers is looked at again. */
function* withWitnesses(field: Field, witnesses: readonly Witness[]): Steps<Field> {
  const candidates: Candidate[] = [];
  for (const [index, { view, fit }] of field.candidates.entries()) {
    const candidate = candidateOf(view, fit, witnesses);
    if (candidate !== undefined) candidates.push(candidate);
    if (index % IN_ONE_STEP === 0) yield;
  }
  return { ...field, witnesses, candidates, undominated: yield* undominatedOf(candidates) };
}

function undominatedOf(candidates: readonly Candidate[]): Steps<Undominated> {
  return undominated(candidates.map(({ covers }) => covers));
}

/** The largest cut first: the others have the less to take. */
function answerOf(target: Target, cuts: readonly Cut[]): Answer {
  const ordered = cuts
    .map((cut) => ({ cut, leftMm: greatestLeft(target.limit, removedBy([cut], target.topMm)).mm }))
    .sort((one, other) => one.leftMm - other.leftMm)
    .map(({ cut }) => cut);
  return { cuts: ordered, leftMm: greatestLeft(target.limit, removedBy(cuts, target.topMm)).mm };
}

/** The answers that leave least, as settings. */
function* bestOf(searched: readonly Searched[], thicknessMm: number): Steps<(readonly SearchSetting[])[]> {
  const answers = searched.flatMap(({ field, answers: ofField }) =>
    ofField.map(({ cuts, leftMm }) => ({ leftMm, cuts, target: field.marked.target })),
  );
  answers.sort((one, other) => one.leftMm - other.leftMm);
  const best: (readonly SearchSetting[])[] = [];
  for (const { target, cuts } of answers.slice(0, ANSWERS_MOST)) {
    best.push(settingsOf(target, cuts, thicknessMm));
    yield;
  }
  return best;
}

/** Bits of which nothing is kept, with the bit that covers what one of theirs would. */
function dominatedOf(fields: readonly Field[]): Dominated[] {
  const dominated = new Map<string, Dominated>();
  const kept = new Set<string>();
  for (const { candidates, undominated: found } of fields) {
    for (const index of found.kept) kept.add(candidates[index]?.view.bit.id ?? "");
    for (const [index, byIndex] of found.by) {
      const one = candidates[index];
      const other = candidates[byIndex];
      if (one === undefined || other === undefined || one.view.bit.id === other.view.bit.id) continue;
      const bitId = one.view.bit.id;
      if (!dominated.has(bitId)) dominated.set(bitId, { bitId, view: one.view, byBitId: other.view.bit.id });
    }
  }
  return [...dominated.values()].filter(({ bitId }) => !kept.has(bitId));
}
