import { roundTo } from "../quantity/round.ts";
import { MM_PER_INCH } from "../quantity/units.ts";
import { angleWord, flutesWord } from "./bit-words.ts";
import { fractionAfterAnd, type NumberRead, numbersAt } from "./read-number.ts";
import type { SizeRole } from "./size.ts";
import { folded, wordsIn } from "./words.ts";

/** One size somebody typed. */
export type QuerySize = {
  readonly role: SizeRole;
  readonly mm: number;
  /** Every reading of a number without a unit that may be either, millimetres first. */
  readonly alternativesMm?: readonly number[];
};

/** What somebody typed, taken apart: a bit answers to it if it has every word and every size. */
export type Query = { readonly words: readonly string[]; readonly sizes: readonly QuerySize[] };

/** What was read from one place on: a size or a word, and the place after it. */
type Read = { readonly size?: QuerySize; readonly word?: string; readonly next: number };

type Range = { readonly min: number; readonly max: number };

/** Text beyond this is not looked at: nobody types as much to find a bit. */
const LONGEST_TEXT = 200;

/** Sizes are given to this many decimals of a millimetre, so that 3-1/2 in is 88.9 mm. */
const DECIMALS = 6;

/** Millimetres in one of each unit a bit's size is given in. */
const UNITS: ReadonlyMap<string, number> = new Map([
  ['"', MM_PER_INCH],
  ["in", MM_PER_INCH],
  ["inch", MM_PER_INCH],
  ["inches", MM_PER_INCH],
  ["mm", 1],
  ["millimeter", 1],
  ["millimeters", 1],
  ["millimetre", 1],
  ["millimetres", 1],
  ["cm", 10],
]);

const ROLES: ReadonlyMap<string, SizeRole> = new Map([
  ["shank", "shank"],
  ["shaft", "shank"],
  ["diameter", "diameter"],
  ["dia", "diameter"],
  ["diam", "diameter"],
  ["radius", "radius"],
  ["rad", "radius"],
  ["r", "radius"],
  ["length", "length"],
  ["long", "length"],
]);

const FLUTES: ReadonlySet<string> = new Set(["flute", "flutes", "fluted", "wing", "wings"]);
const DEGREES: ReadonlySet<string> = new Set(["°", "deg", "degree", "degrees"]);

/** Sizes a bit may have, mm: what lies outside is no size. Ours, a little wider than the ranges of bits. */
const PLAUSIBLE_MM: Readonly<Record<SizeRole, Range>> = {
  any: { min: 0.35, max: 250 },
  diameter: { min: 0.35, max: 130 },
  shank: { min: 2.5, max: 21 },
  radius: { min: 0.35, max: 65 },
  length: { min: 0.35, max: 250 },
};

/** A bare number above this is not inches: no bit is wider. Ours. */
const MOST_BARE_INCHES = 5;

/** A number ends if a unit follows at once ("8mm") or nothing more of the word does; "3a" is a word. */
const UNIT_WORDS = [...UNITS.keys(), ...FLUTES, ...DEGREES].filter((each) => /^[a-z]/.test(each)).join("|");
const TOKENS = new RegExp(
  String.raw`(?:\d+(?:\.\d+)?|\.\d+)(?=(?:${UNIT_WORDS})(?![\p{L}\p{N}])|[^\p{L}\p{N}]|$)|[\p{L}\p{N}]+|[/"°]`,
  "gu",
);

/**
 * Words and sizes in what somebody typed to find a bit: "3-1/2 in panel" has the word "panel" and a size of 88.9 mm. A fraction
 * without a unit is inches; a bare whole or decimal number may be millimetres or inches and carries both readings if a bit
 * may have either. A size belongs to the dimension named beside it ("1/2 shank", "radius 6"). Flutes and angles become
 * words of their own. Whatever does not read as a size stays a word, as `wordsIn` gives it; nothing is thrown.
 * @example
 * readQuery("3-1/2 in panel") // → { words: ["panel"], sizes: [{ role: "any", mm: 88.9 }] }
 */
export function readQuery(text: string): Query {
  const tokens = tokensOf(text);
  const words: string[] = [];
  const sizes: QuerySize[] = [];
  for (let at = 0; at < tokens.length; ) {
    const { size, word, next } = readAt(tokens, at);
    if (size !== undefined) sizes.push(size);
    if (word !== undefined) words.push(word);
    at = next;
  }
  return { words: wordsIn(words.join(" ")), sizes };
}

function tokensOf(text: string): string[] {
  const signed = text.slice(0, LONGEST_TEXT).replace(/[øØ⌀](?=\s*[\d.])/g, " diameter ");
  return [...folded(signed).matchAll(TOKENS)].map(([token]) => token);
}

function readAt(tokens: readonly string[], at: number): Read {
  const role = ROLES.get(tokens[at] ?? "");
  const named =
    role === undefined ? undefined : sizeAt(tokens, tokens[at + 1] === "of" ? at + 2 : at + 1, role);
  return named ?? sizeAt(tokens, at, undefined) ?? { word: tokens[at] ?? "", next: at + 1 };
}

/** A size, or a number of flutes or degrees, that starts here. */
function sizeAt(tokens: readonly string[], at: number, before: SizeRole | undefined): Read | undefined {
  for (const number of [...numbersAt(tokens, at), ...inchAndPartAt(tokens, at)]) {
    const read = countAt(tokens, number) ?? measureAt(tokens, number, before);
    if (read !== undefined) return read;
  }
  return undefined;
}

/** "an inch and a half" has no number before its unit. */
function inchAndPartAt(tokens: readonly string[], at: number): NumberRead[] {
  const next = tokens[at] === "an" || tokens[at] === "a" ? at + 1 : at;
  const isSo = tokens[next] === "inch" && fractionAfterAnd(tokens, next + 1) !== undefined;
  return isSo ? [{ value: 1, isFraction: false, isLoneWord: true, next }] : [];
}

function countAt(tokens: readonly string[], { value, next }: NumberRead): Read | undefined {
  const after = tokens[next] ?? "";
  if (FLUTES.has(after)) return { word: flutesWord(value), next: next + 1 };
  return DEGREES.has(after) ? { word: angleWord(value), next: next + 1 } : undefined;
}

function measureAt(
  tokens: readonly string[],
  number: NumberRead,
  before: SizeRole | undefined,
): Read | undefined {
  const unit = unitAt(tokens, number.next);
  const part = unit?.mm === MM_PER_INCH ? fractionAfterAnd(tokens, unit.next) : undefined;
  const value = number.value + (number.isFraction ? 0 : (part?.value ?? 0));
  const afterUnit = (number.isFraction ? undefined : part?.next) ?? unit?.next ?? number.next;
  const after = before === undefined ? roleAt(tokens, afterUnit) : undefined;
  const role = before ?? after?.role ?? "any";
  if (number.isLoneWord && unit === undefined && role === "any") return undefined;
  const { min, max } = PLAUSIBLE_MM[role];
  const readings = readingsMm(value, number.isFraction, unit?.mm)
    .filter((mm) => mm >= min && mm <= max)
    .map((mm) => roundTo(mm, DECIMALS));
  const [mm] = readings;
  if (mm === undefined) return undefined;
  const size = readings.length > 1 ? { role, mm, alternativesMm: readings } : { role, mm };
  return { size, next: after?.next ?? afterUnit };
}

function readingsMm(value: number, isFraction: boolean, unitMm: number | undefined): number[] {
  if (unitMm !== undefined) return [value * unitMm];
  const inInchesMm = value * MM_PER_INCH;
  if (isFraction) return [inInchesMm];
  return value > MOST_BARE_INCHES ? [value] : [value, inInchesMm];
}

/** A unit, also as in "half an inch" and "three quarters of an inch". */
function unitAt(
  tokens: readonly string[],
  at: number,
): { readonly mm: number; readonly next: number } | undefined {
  const afterOf = tokens[at] === "of" ? at + 1 : at;
  const place = tokens[afterOf] === "a" || tokens[afterOf] === "an" ? afterOf + 1 : afterOf;
  const mm = UNITS.get(tokens[place] ?? "");
  return mm === undefined ? undefined : { mm, next: place + 1 };
}

function roleAt(
  tokens: readonly string[],
  at: number,
): { readonly role: SizeRole; readonly next: number } | undefined {
  const place = tokens[at] === "cutting" || tokens[at] === "cut" ? at + 1 : at;
  const role = ROLES.get(tokens[place] ?? "");
  return role === undefined ? undefined : { role, next: place + 1 };
}
