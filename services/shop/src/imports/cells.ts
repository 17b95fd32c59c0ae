import { describeFault, type Fault, parseLength, parseMass, parseRotation } from "@rimwise/domain";
import { canonicalText } from "../store/canonical.ts";
import type { CellType, Column } from "./columns.ts";
import { formulaTextOf, withoutFormula } from "./formula.ts";
import type { RowFault } from "./rows.ts";

/** What a cell holds, or why it cannot be read. */
export type ReadCell =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly fault: RowFault };

/** A number as programs write it. It is taken digit by digit, so that nothing is lost on the way. */
const PLAIN_NUMBER = /^-?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/i;
const ANGLE = /^(.*?)\s*(?:°|deg|degrees?)$/i;
const MM_PER_M = 1000;

const TRUTHS: ReadonlyMap<string, boolean> = new Map([
  ["true", true],
  ["yes", true],
  ["false", false],
  ["no", false],
]);

/** Reads one cell. A cell that is not there, or is blank although a text cannot be, holds nothing. */
export function readCell(column: Column, cell: string | undefined): ReadCell {
  if (cell === undefined) return { ok: true, value: undefined };
  if (column.type === "text") return { ok: true, value: formulaTextOf(cell) };
  const text = cell.trim();
  return text === "" ? { ok: true, value: undefined } : readText(column, text);
}

/** Writes one cell: full precision, no units, and nothing that a spreadsheet would reckon. */
export function writeCell({ type }: Column, value: unknown): string | undefined {
  if (value === undefined) return undefined;
  if (type === "text") return withoutFormula(String(value));
  return type === "outline" ? canonicalText(value) : String(value);
}

function readText({ name, type }: Column, text: string): ReadCell {
  switch (type) {
    case "text":
    case "word":
      return { ok: true, value: text };
    case "truth": {
      const value = TRUTHS.get(text.toLowerCase());
      return value === undefined
        ? bad(name, "This is neither yes nor no.", "yes, no, true or false")
        : { ok: true, value };
    }
    case "outline":
      return readOutline(name, text);
    default:
      return PLAIN_NUMBER.test(text) ? { ok: true, value: Number(text) } : readQuantity(name, type, text);
  }
}

function readQuantity(
  name: string,
  type: Exclude<CellType, "text" | "word" | "truth" | "outline">,
  text: string,
): ReadCell {
  switch (type) {
    case "length": {
      const length = parseLength(text, "mm");
      return length.ok ? { ok: true, value: length.mm } : unreadable(name, length, "mm");
    }
    case "path-length": {
      const length = parseLength(text, "m");
      return length.ok ? { ok: true, value: length.mm / MM_PER_M } : unreadable(name, length, "m");
    }
    case "mass": {
      const mass = parseMass(text, "g");
      return mass.ok ? { ok: true, value: mass.g } : unreadable(name, mass, "g");
    }
    case "rotation": {
      const speed = parseRotation(text, "rpm");
      return speed.ok ? { ok: true, value: speed.rpm } : unreadable(name, speed, "rpm");
    }
    case "angle": {
      const [, digits = ""] = ANGLE.exec(text) ?? [];
      return PLAIN_NUMBER.test(digits)
        ? { ok: true, value: Number(digits) }
        : bad(name, "This is not an angle.", 'degrees, such as "45", "22.5 deg" or "45°"');
    }
    case "number":
      return bad(name, "This is not a number.", "a number with a decimal point and no unit");
  }
}

function readOutline(name: string, text: string): ReadCell {
  try {
    const value: unknown = JSON.parse(text);
    return { ok: true, value };
  } catch {
    return bad(name, "This is not JSON.", "the segments of a custom outline as one JSON array");
  }
}

function unreadable(name: string, { fault }: { readonly fault: Fault }, unit: string): ReadCell {
  const { message, accepted } = describeFault(fault);
  return bad(name, message, `${accepted}; a number alone is in ${unit}`);
}

function bad(column: string, message: string, accepted: string): ReadCell {
  return { ok: false, fault: { column, message, accepted } };
}
