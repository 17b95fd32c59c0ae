import { FORMS, usualSettings } from "@rimwise/domain";
import { bareBit } from "../bits/bare.ts";
import type { BitRecord } from "../bits/schema.ts";
import { notValid } from "../problems/problem.ts";
import type { Question } from "../store/query.ts";
import type { Wanted } from "./cut-schema.ts";
import { bitsOfForm, type JobBit } from "./facts.ts";
import type { Candidate } from "./planned.ts";

/** How far off a size may be if nobody says, mm or degrees: what a shop measures. Ours. */
const USUAL_TOLERANCE = 0.1;

/** So many bits are planned for one cut, the nearest in size first: a rack has a few of each form. */
const MOST_CANDIDATES = 12;

/** Looks a bit up once for a whole job. */
export type FindBit = (id: string) => Question<JobBit | undefined>;

/** The bits that would make a cut as it is wanted, with the setting of each, the nearest in size first. Throws a problem that names a size the form has not. */
export function* candidatesFor(
  wanted: Exclude<Wanted, { by: "profile" | "joint" }>,
  pointer: string,
  find: FindBit,
): Question<Candidate[]> {
  switch (wanted.by) {
    case "bit": {
      const bit = yield* find(wanted.bitId);
      return bit === undefined ? [] : [{ bit, settings: wanted.cut }];
    }
    case "form":
      return yield* ofForm(wanted, pointer, find);
  }
}

type WantedForm = Extract<Wanted, { by: "form" }>;

function* ofForm(wanted: WantedForm, pointer: string, find: FindBit): Question<Candidate[]> {
  requireKnownSizes(wanted, pointer);
  const fitting = (yield* bitsOfForm(wanted.form))
    .flatMap((record) => {
      const off = offBy(record, wanted);
      return off === undefined ? [] : [{ record, off }];
    })
    .sort((one, other) => one.off - other.off);
  const candidates: Candidate[] = [];
  for (const { record } of fitting.slice(0, MOST_CANDIDATES)) {
    const bit = yield* find(record.id);
    if (bit !== undefined) candidates.push({ bit, settings: wanted.cut ?? usualSettings(bareBit(record)) });
  }
  return candidates;
}

/** Whether a bit has the sizes that are asked for, as far as its form has them. */
export function isOfSizes(
  record: BitRecord,
  { sizes = {}, toleranceMm = USUAL_TOLERANCE }: Pick<WantedForm, "sizes" | "toleranceMm">,
): boolean {
  const own = new Map<string, unknown>(Object.entries(record.form));
  const shared = Object.entries(sizes).filter(([name]) => own.has(name));
  return (
    offBy(record, { by: "form", form: record.form.kind, sizes: Object.fromEntries(shared), toleranceMm }) !==
    undefined
  );
}

/** How far a bit's sizes are off in all; undefined if one of them is too far. */
function offBy(
  { form }: BitRecord,
  { sizes = {}, toleranceMm = USUAL_TOLERANCE }: WantedForm,
): number | undefined {
  const own = new Map<string, unknown>(Object.entries(form));
  let sum = 0;
  for (const [name, size] of Object.entries(sizes)) {
    const value = own.get(name);
    if (typeof size === "number" && typeof value === "number") {
      const off = Math.abs(value - size);
      if (off > toleranceMm) return undefined;
      sum += off;
    } else if (value !== size) return undefined;
  }
  return sum;
}

function requireKnownSizes({ form, sizes = {} }: WantedForm, pointer: string): void {
  const dimensions = FORMS.find(({ kind }) => kind === form)?.dimensions ?? {};
  const named = Object.keys(dimensions);
  const unknown = Object.keys(sizes).filter((name) => !named.includes(name));
  if (unknown.length === 0) return;
  throw notValid(
    unknown.map((name) => ({
      in: "body",
      pointer: `${pointer}/wanted/sizes/${name}`,
      message: "The form has no such size.",
      accepted: named.join(", "),
    })),
  );
}
