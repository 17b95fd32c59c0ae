import type { Bit } from "../bit/bit.ts";
import { formDiameterMm } from "../bit/diameter.ts";
import type { DimensionSpec } from "../bit/form/define.ts";
import {
  FORMS,
  type FormKind,
  formOutline,
  formPilotRadiusMm,
  formSearchedBy,
} from "../bit/form/registry.ts";
import type { BitSize } from "./size.ts";
import { wordsIn } from "./words.ts";

const PILOT_WORDS = "pilot piloted bearing guided";

/** What every bit of a kind is found by, and which of its dimensions are chosen from a list. */
const KINDS: ReadonlyMap<
  FormKind,
  { readonly words: readonly string[]; readonly choices: readonly string[] }
> = new Map(
  FORMS.map(({ kind, title, alsoCalled, dimensions }) => [
    kind,
    {
      words: wordsIn([kind, kind.replaceAll("-", ""), title, ...alsoCalled].join(" ")),
      choices: Object.entries(dimensions).flatMap(([name, { type }]) => (type === "choice" ? [name] : [])),
    },
  ]),
);

const TRADE_WORDS: ReadonlySet<string> = new Set(
  [
    ...[...KINDS.values()].flatMap(({ words }) => words),
    ...FORMS.flatMap(({ dimensions }) =>
      Object.values<DimensionSpec>(dimensions).flatMap((spec) =>
        spec.type === "choice" ? wordsIn(spec.names.join(" ")) : [],
      ),
    ),
    ...wordsIn(PILOT_WORDS),
  ].filter((word) => /^\p{L}{2,}$/u.test(word)),
);

/**
 * The words a bit is found by, as `wordsIn` gives them: its kind, title and what else the trade calls it, the shape chosen for
 * its face or curve, its pilot, its flutes and its angle. For a bit that `bitFaults` found nothing wrong with.
 * @example
 * const bit = { form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 }, shankDiameterMm: 12.7, wings: 2 };
 * bitWords(bit).includes("dado") // → true
 */
export function bitWords(bit: Bit): string[] {
  const { form, wings } = bit;
  const { words = [], choices = [] } = KINDS.get(form.kind) ?? {};
  const given: Readonly<Record<string, unknown>> = form;
  const chosen = choices.map((name) => String(given[name] ?? ""));
  const pilot = formPilotRadiusMm(form) === undefined ? "" : PILOT_WORDS;
  const { angleDeg } = formSearchedBy(form);
  const angle = angleDeg === undefined ? "" : angleWord(angleDeg);
  return [...new Set([...words, ...wordsIn([...chosen, pilot, flutesWord(wings), angle].join(" "))])];
}

/**
 * The sizes in mm a bit is found by: its greatest diameter, its shank, the length of its edges, and its radius if it has one.
 * For a bit that `bitFaults` found nothing wrong with.
 * @example
 * const bit = { form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 }, shankDiameterMm: 12.7, wings: 2 };
 * bitSizes(bit)[1] // → { role: "shank", mm: 12.7 }
 */
export function bitSizes({ form, shankDiameterMm }: Bit): BitSize[] {
  const edges = formOutline(form).filter(({ role }) => role === "edge");
  const fromMm = edges[0]?.fromMm ?? 0;
  const toMm = edges.at(-1)?.toMm ?? 0;
  const { radiusMm } = formSearchedBy(form);
  const sizes: BitSize[] = [
    { role: "diameter", mm: formDiameterMm(form) },
    { role: "shank", mm: shankDiameterMm },
    { role: "length", mm: toMm - fromMm },
  ];
  if (radiusMm !== undefined) sizes.push({ role: "radius", mm: radiusMm });
  return sizes;
}

/** Every word that some bit of the trade is found by, numbers and single letters aside. */
export function tradeWords(): ReadonlySet<string> {
  return TRADE_WORDS;
}

/** How a number of flutes is written as one word: what a query's "2 flutes" comes to. */
export function flutesWord(count: number): string {
  return `${count}flute`;
}

/** The same for an angle: "45 degrees" comes to this. */
export function angleWord(angleDeg: number): string {
  return `${String(angleDeg).replace(".", "p")}deg`;
}
