import { type FieldFault, notValid, type Place } from "../problems/problem.ts";

type Find<Row> = { readonly find: (id: string) => Promise<Row | undefined> };

/** One id in a body and where to look it up; left out, there is nothing to look up. */
export type Named = {
  readonly pointer: string;
  readonly noun: string;
  readonly id: string | undefined;
  readonly reads: Find<object>;
};

/** Refuses a body that names records which do not exist: every one of them at once. */
export async function requireNamed(names: readonly Named[]): Promise<void> {
  const faults: FieldFault[] = [];
  for (const { pointer, noun, id, reads } of names) {
    if (id !== undefined && (await reads.find(id)) === undefined) faults.push(unknownRecord(pointer, noun));
  }
  if (faults.length > 0) throw notValid(faults);
}

/** The record that a body names, or the refusal that says there is none. */
export async function requireOne<Row>(
  pointer: string,
  noun: string,
  id: string,
  reads: Find<Row>,
): Promise<Row> {
  const row = await reads.find(id);
  if (row === undefined) throw notValid([unknownRecord(pointer, noun)]);
  return row;
}

/** A collet that is named beside a router must be one of its own. */
export function requireColletOf(routerId: string, collet: { readonly routerId: string } | undefined): void {
  if (collet === undefined || collet.routerId === routerId) return;
  const accepted = "the id of a collet of that router";
  throw notValid([{ in: "body", pointer: "/colletId", message: "It is another router's.", accepted }]);
}

/** The fault of a field that names a record which does not exist. */
export function unknownRecord(pointer: string, noun: string, place: Place = "body"): FieldFault {
  return {
    in: place,
    pointer,
    message: `There is no such ${noun}.`,
    accepted: `the id of a ${noun} of the shop`,
  };
}
