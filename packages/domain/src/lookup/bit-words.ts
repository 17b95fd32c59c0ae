import type { Bit } from "../bit/bit.ts";
import { formDiameterMm } from "../bit/diameter.ts";
import { FORMS, type FormKind, formOutline, formPilotRadiusMm } from "../bit/form/registry.ts";
import type { BitSize } from "./size.ts";
import { SYNONYMS } from "./synonyms.ts";
import { wordsIn } from "./words.ts";

/** What every bit of a kind is found by, and which of its dimensions are chosen from a list. */
const KINDS: ReadonlyMap<
  FormKind,
  { readonly words: readonly string[]; readonly choices: readonly string[] }
> = new Map(
  FORMS.map(({ kind, title, dimensions }) => [
    kind,
    {
      words: wordsIn([kind, kind.replaceAll("-", ""), title, SYNONYMS[kind]].join(" ")),
      choices: Object.entries(dimensions).flatMap(([name, { type }]) => (type === "choice" ? [name] : [])),
    },
  ]),
);

/**
 * The words a bit is found by, as `wordsIn` gives them: its kind, title and what else the trade calls it, the shape chosen for
 * its face or curve, its pilot, its flutes and its angle. For a bit that `bitFaults` found nothing wrong with.
 */
export function bitWords(bit: Bit): string[] {
  const { form, wings } = bit;
  const { words = [], choices = [] } = KINDS.get(form.kind) ?? {};
  const given: Readonly<Record<string, unknown>> = form;
  const chosen = choices.map((name) => String(given[name] ?? ""));
  const pilot = formPilotRadiusMm(form) === undefined ? "" : "pilot piloted bearing guided";
  const angle = "angleDeg" in form ? angleWord(form.angleDeg) : "";
  return [...new Set([...words, ...wordsIn([...chosen, pilot, flutesWord(wings), angle].join(" "))])];
}

/** The sizes a bit is found by: its greatest diameter, its shank, the length of its edges, and its radius where it has one. */
export function bitSizes({ form, shankDiameterMm }: Bit): BitSize[] {
  const edges = formOutline(form).filter(({ role }) => role === "edge");
  const fromMm = edges[0]?.fromMm ?? 0;
  const toMm = edges.at(-1)?.toMm ?? 0;
  const diameterMm = formDiameterMm(form);
  const sizes: BitSize[] = [
    { role: "diameter", mm: diameterMm },
    { role: "shank", mm: shankDiameterMm },
    { role: "length", mm: toMm - fromMm },
  ];
  if ("radiusMm" in form) sizes.push({ role: "radius", mm: form.radiusMm });
  if (form.kind === "core-box") sizes.push({ role: "radius", mm: diameterMm / 2 });
  return sizes;
}

/** How a number of flutes is written as one word: what a query's "2 flutes" comes to. */
export function flutesWord(count: number): string {
  return `${count}flute`;
}

/** The same for an angle: "45 degrees" comes to this. */
export function angleWord(angleDeg: number): string {
  return `${String(angleDeg).replace(".", "p")}deg`;
}
