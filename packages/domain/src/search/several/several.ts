import type { Steps } from "../../quantity/steps.ts";
import { type BitView, bitView, type SearchBit } from "../bit-view.ts";
import type { MarkedTarget } from "../one-bit.ts";
import type { SearchSetting } from "../setting.ts";
import { firstOf } from "./bit-set.ts";
import { type Candidate, type Cut, candidateOf, candidatesOf, slidingParts } from "./candidate.ts";
import { coversOf, type Undominated, undominated } from "./cover.ts";
import { isMadeBy, leftByAll, missedBy, settingsOf, type Wanted } from "./union.ts";
import { firstWitnesses, MOST_WITNESSES, seenIn, type Witness } from "./witness.ts";

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

/** A profile with its candidates in every presentation; both grow more exact as places are found that covers miss. */
type Field = {
  readonly wanted: Wanted;
  readonly witnesses: readonly Witness[];
  readonly candidates: readonly Candidate[];
  readonly undominated: Undominated;
  readonly isComplete: boolean;
};

type Searched = { readonly field: Field; readonly answers: readonly Answer[]; readonly isComplete: boolean };

type Answer = { readonly cuts: readonly Cut[]; readonly leftMm: number };

/**
 * The fewest set-ups, two to `setupsMax`, that make a profile together. Each way of seeing it is searched by itself first: fewer places are asked
 * of each cut there, so that none is lost to a bound; then with the work presented to each cut as suits it, for fewer still.
 */
export function* searchSeveral(
  bits: readonly SearchBit[],
  targets: readonly MarkedTarget[],
  setupsMax: number,
  thicknessMm: number,
): Steps<Several> {
  let best: Several = { together: [], dominated: [], isComplete: true };
  let most = setupsMax;
  for (const target of targets) {
    const alone = yield* searchTogether(bits, [target], most, thicknessMm);
    best = better(best, alone);
    // Another view may do with as many: of these the one that leaves least is wanted.
    most = best.together[0]?.length ?? setupsMax;
  }
  if (targets.length < 2) return best;
  const fewer = best.together.length === 0 ? setupsMax : most - 1;
  return better(best, yield* searchTogether(bits, targets, fewer, thicknessMm));
}

/** The one with fewer set-ups; what both know of bits that were not taken, and whether both are complete. */
function better(one: Several, other: Several): Several {
  const [mine, theirs] = [one, other].map(({ together }) => together[0]?.length ?? Infinity);
  const both = [...one.together, ...other.together];
  const together = mine === theirs ? both : (mine ?? 0) < (theirs ?? 0) ? one.together : other.together;
  return {
    together,
    dominated: one.dominated.length === 0 ? other.dominated : one.dominated,
    isComplete: one.isComplete && other.isComplete,
  };
}

/** The same for these targets as one search. */
function* searchTogether(
  bits: readonly SearchBit[],
  targets: readonly MarkedTarget[],
  setupsMax: number,
  thicknessMm: number,
): Steps<Several> {
  if (setupsMax < 2) return { together: [], dominated: [], isComplete: true };
  let field = yield* fieldOf(bits, targets, thicknessMm);
  let { isComplete } = field;
  let together: (readonly SearchSetting[])[] = [];
  for (let count = 2; count <= setupsMax && together.length === 0; count += 1) {
    const searched = yield* searchField(field, count);
    field = searched.field;
    isComplete &&= searched.isComplete;
    together = yield* bestOf(searched);
  }
  return { together, dominated: dominatedOf(field), isComplete };
}

function* fieldOf(
  bits: readonly SearchBit[],
  marked: readonly MarkedTarget[],
  thicknessMm: number,
): Steps<Field> {
  const wanted = { targets: marked.map(({ target }) => target), thicknessMm };
  const witnesses = firstWitnesses(wanted.targets, thicknessMm);
  const candidates: Candidate[] = [];
  let isComplete = true;
  for (const { target, marks } of marked) {
    const parts = slidingParts(target);
    const places = witnesses.map((witness) => seenIn(target.wall, witness, thicknessMm));
    for (const bit of bits) {
      for (const presentation of target.presentations) {
        const view = bitView(bit, presentation, target.topMm);
        const found = yield* candidatesOf(view, target, marks, parts, places);
        candidates.push(...found.candidates);
        isComplete &&= found.isComplete;
      }
      yield;
    }
  }
  // Of equal ones the first is kept: the one with the widest margin.
  candidates.sort((one, other) => other.marginMm - one.marginMm);
  return { wanted, witnesses, candidates, undominated: yield* undominatedOf(candidates), isComplete };
}

/**
 * The covers of a field by so many, each looked at exactly. If all of them miss some place, that becomes a witness, and they
 * are sought again.
 */
function* searchField(start: Field, count: number): Steps<Searched> {
  let field = start;
  for (;;) {
    const { wanted } = field;
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
      if (isMadeBy(wanted, cuts)) answers.push(answerOf(wanted, cuts));
      else if (missed.length < ADDED_AT_ONCE) missed.push(...missedBy(wanted, cuts));
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
  const { targets, thicknessMm } = field.wanted;
  const places = new Map(
    targets.map((target) => [target, witnesses.map((each) => seenIn(target.wall, each, thicknessMm))]),
  );
  const candidates: Candidate[] = [];
  for (const [index, { view, fit, target }] of field.candidates.entries()) {
    const candidate = candidateOf({ view, fit, target }, places.get(target) ?? []);
    if (candidate !== undefined) candidates.push(candidate);
    if (index % IN_ONE_STEP === 0) yield;
  }
  return { ...field, witnesses, candidates, undominated: yield* undominatedOf(candidates) };
}

function undominatedOf(candidates: readonly Candidate[]): Steps<Undominated> {
  return undominated(candidates.map(({ covers }) => covers));
}

/** The largest cut first: the others have the less to take. */
function answerOf(wanted: Wanted, cuts: readonly Cut[]): Answer {
  const ordered = cuts
    .map((cut) => ({ cut, leftMm: leftByAll(wanted, [cut]).left.mm }))
    .sort((one, other) => one.leftMm - other.leftMm)
    .map(({ cut }) => cut);
  return { cuts: ordered, leftMm: leftByAll(wanted, cuts).left.mm };
}

/** The answers that leave least, as settings. */
function* bestOf({ field, answers }: Searched): Steps<(readonly SearchSetting[])[]> {
  const sorted = [...answers].sort((one, other) => one.leftMm - other.leftMm);
  const best: (readonly SearchSetting[])[] = [];
  for (const { cuts } of sorted.slice(0, ANSWERS_MOST)) {
    best.push(settingsOf(field.wanted, cuts));
    yield;
  }
  return best;
}

/** Bits of which nothing is kept, with the bit that covers what one of theirs would. */
function dominatedOf({ candidates, undominated: found }: Field): Dominated[] {
  const kept = new Set(found.kept.map((index) => candidates[index]?.view.bit.id));
  const dominated = new Map<string, Dominated>();
  for (const [index, byIndex] of found.by) {
    const one = candidates[index];
    const other = candidates[byIndex];
    const bitId = one?.view.bit.id;
    const byBitId = other?.view.bit.id;
    if (one === undefined || bitId === undefined || byBitId === undefined) continue;
    if (bitId === byBitId || kept.has(bitId) || dominated.has(bitId)) continue;
    dominated.set(bitId, { bitId, view: one.view, byBitId });
  }
  return [...dominated.values()];
}
