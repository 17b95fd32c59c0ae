import { FORMS, type FormKind, usualSettings } from "@rimwise/domain";
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

type SizesAsked = {
  readonly sizes?: WantedForm["sizes"] | undefined;
  readonly toleranceMm?: number | undefined;
};
type WantedForm = Extract<Wanted, { by: "form" }>;

function* ofForm(wanted: WantedForm, pointer: string, find: FindBit): Question<Candidate[]> {
  requireSizesOf([wanted.form], wanted.sizes ?? {}, `${pointer}/wanted/sizes`);
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

/** Whether a bit has the sizes that are asked for. */
export function isOfSizes(record: BitRecord, asked: SizesAsked): boolean {
  return offBy(record, asked) !== undefined;
}

/** How far a bit's sizes are off in all; undefined if one of them is too far. */
function offBy(
  { form }: BitRecord,
  { sizes = {}, toleranceMm = USUAL_TOLERANCE }: SizesAsked,
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

/** Refuses sizes that none of these forms has; `pointer` is theirs. */
export function requireSizesOf(
  forms: readonly FormKind[],
  sizes: Readonly<Record<string, unknown>>,
  pointer: string,
): void {
  const named = FORMS.filter(({ kind }) => forms.includes(kind)).flatMap(({ dimensions }) =>
    Object.keys(dimensions),
  );
  const unknown = Object.keys(sizes).filter((name) => !named.includes(name));
  if (unknown.length === 0) return;
  throw notValid(
    unknown.map((name) => ({
      in: "body",
      pointer: `${pointer}/${name}`,
      message: "The form has no such size.",
      accepted: [...new Set(named)].join(", "),
    })),
  );
}
