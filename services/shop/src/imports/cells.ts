import { harmless, isWellFormed, NOT_TEXT, normalText } from "../http/text.ts";
import { canonicalText } from "../store/canonical.ts";
import type { Column } from "./columns.ts";
import { formulaTextOf, withoutFormula } from "./formula.ts";
import { nearestName } from "./nearest.ts";
import { readQuantity } from "./quantity-cell.ts";
import type { Reading, RowFault } from "./rows.ts";

/** What a cell holds and how it was read, or why it cannot be. `standIn` is what was probably meant. */
export type ReadCell =
  | { readonly ok: true; readonly value: unknown; readonly reading?: Reading }
  | { readonly ok: false; readonly fault: RowFault; readonly standIn?: unknown };

const CURRENCY = /^[A-Z]{3}$/;

const TRUTHS: ReadonlyMap<string, boolean> = new Map([
  ["true", true],
  ["yes", true],
  ["false", false],
  ["no", false],
]);

/** Reads one cell. A cell that is not there, or is blank although a text cannot be, holds nothing. */
export function readCell(column: Column, cell: string | undefined): ReadCell {
  if (cell === undefined) return { ok: true, value: undefined };
  if (!isWellFormed(cell)) {
    const { message, accepted } = NOT_TEXT;
    return { ok: false, fault: { column: column.name, message, accepted } };
  }
  if (column.type === "text") return { ok: true, value: normalText(formulaTextOf(cell)) };
  const text = cell.trim();
  return text === "" ? { ok: true, value: undefined } : readText(column, text);
}

/** Writes one cell: full precision, no units, and nothing that a spreadsheet would reckon. */
export function writeCell({ type }: Column, value: unknown): string | undefined {
  if (value === undefined) return undefined;
  if (type === "text") return withoutFormula(String(value));
  return type === "outline" ? canonicalText(value) : String(value);
}

function readText(column: Column, text: string): ReadCell {
  switch (column.type) {
    case "text":
      return { ok: true, value: text };
    case "word":
      return readWord(column, text);
    case "currency":
      return CURRENCY.test(text)
        ? { ok: true, value: text }
        : badWord(
            column,
            text,
            "an ISO 4217 code, such as EUR",
            text.length === 3 ? text.toUpperCase() : undefined,
          );
    case "truth": {
      const value = TRUTHS.get(text.toLowerCase());
      return value === undefined
        ? bad(column, text, "This is neither yes nor no.", "yes, no, true or false")
        : { ok: true, value };
    }
    case "outline":
      return readOutline(column, text);
    default: {
      const read = readQuantity(column.name, column.type, text);
      if ("message" in read) return bad(column, text, read.message, read.accepted);
      const { value, note } = read;
      const reading = {
        column: column.name,
        given: text,
        read: read.shown,
        ...(note !== undefined && { note }),
      };
      return { ok: true, value, reading };
    }
  }
}

function readWord(column: Column, text: string): ReadCell {
  const { names } = column;
  if (names === undefined || names.includes(text)) return { ok: true, value: text };
  return badWord(column, text, `one of: ${names.join(", ")}`, nearestName(text, names));
}

function readOutline(column: Column, text: string): ReadCell {
  try {
    const value: unknown = JSON.parse(text);
    return { ok: true, value };
  } catch {
    return bad(column, text, "This is not JSON.", "the segments of a custom outline as one JSON array");
  }
}

function badWord({ name }: Column, given: string, accepted: string, nearest: string | undefined): ReadCell {
  const meant = nearest === undefined ? "" : ` Is ${nearest} meant?`;
  const fault = {
    column: name,
    given: shortened(given),
    message: `"${shortened(given)}" is not known here.${meant}`,
    accepted,
  };
  return nearest === undefined
    ? { ok: false, fault }
    : { ok: false, fault: { ...fault, nearest }, standIn: nearest };
}

function bad({ name }: Column, given: string, message: string, accepted: string): ReadCell {
  return { ok: false, fault: { column: name, given: shortened(given), message, accepted } };
}

const MOST_SHOWN = 60;

/** As much of a text as a report repeats. */
export function shortened(text: string): string {
  return harmless(text.length > MOST_SHOWN ? `${text.slice(0, MOST_SHOWN - 1)}…` : text);
}
