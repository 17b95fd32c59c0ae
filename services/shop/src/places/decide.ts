import { bitAfter } from "../bits/decide.ts";
import type { BitRecord } from "../bits/schema.ts";
import { merged } from "../http/fields.ts";
import { notValid } from "../problems/problem.ts";
import { creation, type Decision, newRecord, nextVersion, replacement } from "../store/changes.ts";
import type { Change } from "../store/port.ts";
import { placeKind } from "./kind.ts";
import type { NewPlace, PlaceChange, PlaceContents, PlaceRecord } from "./schema.ts";

/** A new place to keep bits. */
export function createPlace(id: string, given: NewPlace, at: string): Decision<PlaceRecord> {
  const record = newRecord(id, given, at);
  return { record, changes: [creation(placeKind, record)] };
}

/** A place's next state. `outer` is what it would be inside, from there outward: never itself. */
export function changePlace(
  current: PlaceRecord,
  change: PlaceChange,
  outer: readonly PlaceRecord[],
  at: string,
): Decision<PlaceRecord> {
  if (outer.some(({ id }) => id === current.id)) {
    const accepted = "a place that is not inside this one";
    throw notValid([{ in: "body", pointer: "/insideId", message: "It would be inside itself.", accepted }]);
  }
  const record = nextVersion(merged<PlaceRecord>(current, change), at);
  return { record, changes: [replacement(placeKind, current, record)] };
}

/** A place among others: itself and all inside it, and those that it is inside. */
export type Surroundings = { readonly within: readonly string[]; readonly outer: readonly string[] };

/** What is in a place, what should be, and what is missing. */
export function contentsOf(
  placeId: string,
  { within, outer }: Surroundings,
  bits: readonly BitRecord[],
  isComplete: boolean,
): PlaceContents {
  const inside = new Set(within);
  const around = new Set(outer);
  const isHere = (bit: BitRecord) => {
    const { state, missingSince } = bit;
    const where = whereIs(bit);
    // Who saw it in the rack did not say that it is in another position than its own.
    const isThere = where !== undefined && (inside.has(where) || (belongs(bit) && around.has(where)));
    return isThere && missingSince === undefined && (state === "in-rack" || state === "held");
  };
  const belongs = ({ homePlaceId }: BitRecord) => homePlaceId !== undefined && inside.has(homePlaceId);
  const idsOf = (of: (bit: BitRecord) => boolean) => bits.filter(of).map(({ id }) => id);
  return {
    placeId,
    here: idsOf((bit) => isHere(bit) && belongs(bit)),
    misplaced: idsOf((bit) => isHere(bit) && !belongs(bit)),
    away: bits
      .filter((bit) => belongs(bit) && !isHere(bit) && bit.missingSince === undefined)
      .map(({ id, state, placeId: seen }) => ({
        bitId: id,
        state,
        ...(seen !== undefined && { placeId: seen }),
      })),
    missing: idsOf((bit) => belongs(bit) && bit.missingSince !== undefined),
    names: Object.fromEntries(bits.map(({ id, name }) => [id, name])),
    isComplete,
  };
}

/**
 * What a count changes: a bit that was seen is here and no longer missing; one that should be here and was not
 * seen is missing from now on. Also every bit that was expected or seen, as it is after the count.
 */
export function countBits(
  placeId: string,
  within: readonly string[],
  expected: readonly BitRecord[],
  seen: readonly BitRecord[],
  at: string,
): { readonly changes: readonly Change[]; readonly bits: readonly BitRecord[] } {
  const inside = new Set(within);
  const seenIds = new Set(seen.map(({ id }) => id));
  const isIn = (place: string | undefined) => place !== undefined && inside.has(place);
  const found = seen
    .filter((bit) => bit.missingSince !== undefined || !isIn(bit.placeId))
    .map((bit) => {
      // In the position it belongs in, when that is in the place that was counted.
      const seenAt = [bit.placeId, bit.homePlaceId].find(isIn) ?? placeId;
      return bitAfter(bit, "seen", { placeId: seenAt, missingSince: undefined }, at);
    });
  const lost = expected
    .filter((bit) => !seenIds.has(bit.id) && shouldBeHere(bit, inside))
    .map((bit) => bitAfter(bit, "missed", { missingSince: at }, at));
  const decided = [...found, ...lost];
  const bits = new Map([...expected, ...seen].map((bit) => [bit.id, bit]));
  for (const { record } of decided) bits.set(record.id, record);
  return { changes: decided.flatMap(({ changes }) => changes), bits: [...bits.values()] };
}

/** A bit that nobody has taken or sent away, last seen here. */
function shouldBeHere(bit: BitRecord, inside: ReadonlySet<string>): boolean {
  const where = whereIs(bit);
  return (
    bit.state !== "retired" && bit.missingSince === undefined && where !== undefined && inside.has(where)
  );
}

/** Where a bit is as far as anybody knows: seen nowhere yet, it is where it belongs; taken or sent away, nowhere. */
function whereIs({ loanId, sentToSharpeningAt, placeId, homePlaceId }: BitRecord): string | undefined {
  if (loanId !== undefined || sentToSharpeningAt !== undefined) return undefined;
  return placeId ?? homePlaceId;
}
