import { type FieldFault, notValid, type RequestPart } from "../problems/problem.ts";
import { type Askable, asked, type Question } from "../store/query.ts";

/** Where a named record is looked up, and what one of them is called. */
type Findable<Row> = {
  readonly kind: { readonly noun: string };
  readonly find: (id: string) => Askable<Row | undefined>;
};

/** One id in a body and where to look it up; undefined when the body names none. */
export type Named = {
  readonly pointer: string;
  readonly id: string | undefined;
  readonly of: Findable<object>;
};

/** Refuses a body that names records which do not exist: every one of them at once. */
export function* requireNamed(names: readonly Named[]): Question<void> {
  const faults: FieldFault[] = [];
  for (const { pointer, id, of } of names) {
    if (id !== undefined && (yield* asked(of.find(id))) === undefined)
      faults.push(unknownRecord(pointer, of.kind.noun));
  }
  if (faults.length > 0) throw notValid(faults);
}

/** The record that a body names, or the refusal that says there is none. */
export function* requireOne<Row>(pointer: string, id: string, of: Findable<Row>): Question<Row> {
  const row = yield* asked(of.find(id));
  if (row === undefined) throw notValid([unknownRecord(pointer, of.kind.noun)]);
  return row;
}

/** Every record that a query names in `ids`, once each; or the refusal of an id of which there is none, or of more than `most`. */
export function* namedInQuery<Row>(
  ids: string,
  of: Findable<Row> & { readonly kind: { readonly path?: string } },
  most = Number.POSITIVE_INFINITY,
): Question<Row[]> {
  const named = [...new Set(ids.split(","))];
  const { noun, path } = of.kind;
  const refused = (message: string) => {
    const known = path === undefined ? `ids of ${noun}s` : `ids that GET ${path} lists`;
    const accepted = Number.isFinite(most) ? `at most ${most} ${known}` : known;
    return notValid([{ in: "query", pointer: "/ids", message, accepted }]);
  };
  if (named.length > most) throw refused(`These are ${named.length} ${noun}s.`);
  const found: Row[] = [];
  for (const id of named) {
    const row = yield* asked(of.find(id));
    if (row === undefined) throw refused(`There is no ${noun} ${id}.`);
    found.push(row);
  }
  return found;
}

/** The fault of a field that names a record which does not exist. */
export function unknownRecord(pointer: string, noun: string, part: RequestPart = "body"): FieldFault {
  return {
    in: part,
    pointer,
    message: `There is no such ${noun}.`,
    accepted: `the id of a ${noun} of the shop`,
  };
}
