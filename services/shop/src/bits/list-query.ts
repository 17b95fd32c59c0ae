import {
  BIT_RANGES,
  correctWord,
  type DialSpeed,
  FORMS,
  type Query,
  type Router,
  readQuery,
  SAME_SIZE_MM,
  TOOTH_MATERIALS,
} from "@rimwise/domain";
import Type, { type Static } from "typebox";

import { IDENTITY_FILTERS, identityOf } from "../http/identity-filters.ts";
import { PageQuery } from "../http/paging.ts";
import { facet, sizeFacetsWithin, wordFacet } from "./facets.ts";
import type { BitFilter } from "./reads.ts";
import { BIT_STATES } from "./state-schema.ts";

/** How far a size that somebody types may be off: what is called 1/2 in is often 12 or 13 mm. Ours. */
const TYPED_TOLERANCE_MM = 0.4;
/** A diameter this near to what was typed comes first. Ours. */
const BEST_TOLERANCE_MM = 0.1;
const MOST_TOLERANCE_MM = 5;

const size = (description: string) =>
  Type.Optional(Type.Number({ exclusiveMinimum: 0, maximum: 300, description }));
const known = (what: string) =>
  Type.Optional(Type.Enum(["missing"], { type: "string", description: `Bits that have no ${what}.` }));

const CLEARANCES = ["handheld", "handheld-with-care", "table-only"];
const LACKED = ["mass", "marking"];

/** One name or several, any of which will do. */
function someOf(names: readonly string[], what: string) {
  const name = `(${names.join("|")})`;
  const description = `${what}: one of ${names.join(", ")}, or several with commas between them`;
  return Type.Optional(Type.String({ pattern: `^${name}(,${name})*$`, maxLength: 200, description }));
}

/** What the list of bits can be narrowed by; all of it combines. */
export const BitListQuery = Type.Object(
  {
    ...PageQuery.properties,
    q: Type.Optional(
      Type.String({
        minLength: 1,
        maxLength: 200,
        description:
          'Words and sizes as people type them, such as "3 1/2 panel" or "half inch shank cove". What fits best comes first: bits of that diameter, then of that size anywhere, then what was probably meant by a mistyped word.',
      }),
    ),
    state: Type.Optional(Type.Enum([...BIT_STATES], { type: "string", description: "Where it stands." })),
    kind: Type.Optional(
      Type.Enum(
        FORMS.map(({ kind }) => kind),
        { type: "string", description: "Its form." },
      ),
    ),
    diameterMm: size("Its greatest diameter."),
    shankDiameterMm: size("Diameter of its shank."),
    toleranceMm: Type.Optional(
      Type.Number({
        minimum: 0,
        maximum: MOST_TOLERANCE_MM,
        description: `How far the sizes may be off. Default: ${TYPED_TOLERANCE_MM} mm.`,
      }),
    ),
    homePlaceId: Type.Optional(Type.String({ maxLength: 100, description: "Where it belongs." })),
    placeId: Type.Optional(Type.String({ maxLength: 100, description: "Where it was last seen." })),
    missing: Type.Optional(Type.Enum(["yes"], { type: "string", description: "Bits not seen at a count." })),
    clearance: someOf(CLEARANCES, "What it is cleared for by its size, mass and energy"),
    toothMaterial: Type.Optional(
      Type.Enum([...TOOTH_MATERIALS], { type: "string", description: "What its edges are made of." }),
    ),
    lacks: someOf(LACKED, "Bits that lack at least one of these: a mass weighed, a maximum speed recorded"),
    mass: known("mass weighed"),
    marking: known("maximum speed recorded"),
    fitsRouterId: Type.Optional(
      Type.String({
        maxLength: 100,
        description:
          "Bits that a collet of this router takes and that stay under their ceiling at its slowest.",
      }),
    ),
    number: Type.Optional(
      Type.Integer({
        minimum: 1,
        maximum: 1_000_000_000,
        description: "Of this number of the shop's own, as labels have it.",
      }),
    ),
    setName: Type.Optional(
      Type.String({ minLength: 1, maxLength: 100, description: "Of the set of this name." }),
    ),
    ...IDENTITY_FILTERS,
  },
  { additionalProperties: false },
);

export type BitListQueryType = Static<typeof BitListQuery>;

/** The router of `fitsRouterId`, and the speeds it can be set to. */
type FittingRouter = { readonly router: Router; readonly speeds: readonly DialSpeed[] };

/** A list's query as what the store looks up, best first. */
export function bitFilters(
  query: BitListQueryType,
  fitting: FittingRouter | undefined,
): readonly BitFilter[] {
  if (query.q === undefined) return [bitFilter(query, NOTHING_TYPED, fitting)];
  const read = readQuery(query.q);
  const filters = readingsOf(read).map((each) => bitFilter(query, each, fitting));
  return filters.map(({ match, ...rest }, index) => {
    const except = filters.slice(0, index).flatMap((better) => better.match ?? []);
    return match === undefined ? rest : { ...rest, match: { ...match, except } };
  });
}

/** What was typed, the likeliest first: a size is the diameter, any size, and then words as they were probably meant. */
function readingsOf(read: Query): Typed[] {
  const exact = typed(read, TYPED_TOLERANCE_MM);
  const isUnnamed = read.sizes.some(({ role }) => role === "any");
  const asDiameter = read.sizes.map((size) =>
    size.role === "any" ? { ...size, role: "diameter" as const } : size,
  );
  const best = isUnnamed ? [typed({ ...read, sizes: asDiameter }, BEST_TOLERANCE_MM)] : [];
  return [...best, exact, ...corrected(exact, read.words)];
}

function corrected(exact: Typed, words: readonly string[]): Typed[] {
  const corrections = words.map((word) => ({ word, correction: correctWord(word) }));
  if (corrections.every(({ correction }) => correction === undefined)) return [];
  return [
    {
      ...exact,
      words: corrections.flatMap(({ word, correction }) => {
        if (correction === undefined) return [wordFacet(word)];
        return correction.kind === "joined" ? correction.words.map(wordFacet) : [];
      }),
      anyOfWords: corrections.flatMap(({ word, correction }) =>
        correction?.kind === "near" ? [[word, ...correction.anyOf].map(wordFacet)] : [],
      ),
    },
  ];
}

function bitFilter(query: BitListQueryType, read: Typed, fitting: FittingRouter | undefined): BitFilter {
  const { toleranceMm = TYPED_TOLERANCE_MM, diameterMm, shankDiameterMm } = query;
  const { words, anyOf, anyOfWords = [] } = read;
  const anyOfFacets = [
    ...facetsAsked(query).map((each) => [each]),
    ...anyFacet("clearance", query.clearance),
    ...anyFacet("no", query.lacks),
    ...(diameterMm === undefined ? [] : [sizeFacetsWithin("diameter", diameterMm, toleranceMm)]),
    ...(shankDiameterMm === undefined ? [] : [sizeFacetsWithin("shank", shankDiameterMm, toleranceMm)]),
    ...(fitting === undefined ? [] : colletFacets(fitting.router)),
    ...anyOf,
  ];
  const isNarrowed = words.length > 0 || anyOfWords.length > 0 || anyOfFacets.length > 0;
  return {
    ...(isNarrowed && { match: { words, anyOfWords, anyOfFacets } }),
    ...(fitting && { runsAt: slowestSettings(fitting.speeds) }),
    ...(query.setName !== undefined && { setName: query.setName }),
    ...(query.number !== undefined && { shopNumber: query.number }),
    ...identityOf(query),
  };
}

/** What was typed: words that must all be found, and facets one of each list. */
type Typed = {
  readonly words: readonly string[];
  readonly anyOf: readonly (readonly string[])[];
  readonly anyOfWords?: readonly (readonly string[])[];
};

const NOTHING_TYPED: Typed = { words: [], anyOf: [] };

/** The settings of which every other one is both nominally and actually as fast as one: mostly the first mark alone. */
function slowestSettings(speeds: readonly DialSpeed[]): DialSpeed[] {
  const slowest: DialSpeed[] = [];
  for (const speed of [...speeds].sort((one, other) => one.rpm - other.rpm)) {
    const known = slowest.at(-1);
    if (known === undefined || speed.rpmHighest < known.rpmHighest) slowest.push(speed);
  }
  return slowest;
}

/** Any of the names of a list written with commas. */
function anyFacet(name: string, values: string | undefined): string[][] {
  return values === undefined ? [] : [values.split(",").map((value) => facet(name, value))];
}

function facetsAsked(query: BitListQueryType): string[] {
  const { state, kind, toothMaterial, homePlaceId, placeId } = query;
  const asked: [string, string | undefined][] = [
    ["state", state],
    ["kind", kind],
    ["tooth", toothMaterial],
    ["home", homePlaceId],
    ["at", placeId],
    ["is", query.missing && "missing"],
    ["no", query.mass && "mass"],
    ["no", query.marking && "marking"],
  ];
  return asked.flatMap(([name, value]) => (value === undefined ? [] : [facet(name, value)]));
}

/** A word that stands nowhere finds nothing, as a query of no words at all should. */
const NOWHERE = "nowhere";

function typed({ words, sizes }: Query, toleranceMm: number): Typed {
  const anyOf = sizes.map(({ role, mm, alternativesMm = [] }) =>
    [mm, ...alternativesMm].flatMap((each) => sizeFacetsWithin(role, each, toleranceMm)),
  );
  if (words.length === 0 && anyOf.length === 0) return { words, anyOf: [[NOWHERE]] };
  return { words: words.map(wordFacet), anyOf };
}

function colletFacets({ colletDiametersMm }: Router): string[][] {
  if (colletDiametersMm === undefined) return [];
  const shanks = colletDiametersMm
    .filter((mm) => mm <= BIT_RANGES.shankDiameterMm.max)
    .flatMap((mm) => sizeFacetsWithin("shank", mm, SAME_SIZE_MM));
  return [shanks.length > 0 ? shanks : [NOWHERE]];
}
