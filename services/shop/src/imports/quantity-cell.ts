import {
  describeFault,
  type Fault,
  FORMS,
  parseLength,
  parseMass,
  parseRotation,
  showIn,
} from "@rimwise/domain";
import { withDecimalPoint } from "./decimal-comma.ts";

export type QuantityType = "length" | "path-length" | "mass" | "rotation" | "angle" | "number";

/** A quantity and how a report shows it, or why it cannot be read. */
export type ReadQuantity =
  | { readonly value: number; readonly shown: string; readonly note?: string }
  | { readonly message: string; readonly accepted: string };

/** A number as programs write it. It is taken digit by digit, so that nothing is lost on the way. */
const PLAIN_NUMBER = /^-?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/i;
/** A fraction alone: people write them in inches, whatever the column is in. */
const BARE_FRACTION = /^(?:\d+(?:-|\s+))?\d+\s*\/\s*\d+$|^\d*\s*[¼-¾⅐-⅞]$/;
const ANGLE = /^(.*?)\s*-?(?:°|deg|degrees?)$/i;
/** A bare number above this cannot be inches: no bit is wider. Ours. */
const MOST_BARE_INCHES = 5;
const MM_PER_M = 1000;
const MM_PER_INCH = 25.4;

/** What people add to a size that says nothing else of it: its sign, and words that name kinds of bits. */
const DIAMETER_SIGN = /^(?:[øØ⌀]|dia\.?|diam\.?|diameter)\s*(?=[\d.,])/i;
const SAYING_NOTHING = new Set([
  ...["dia", "dia.", "diam", "diam.", "diameter", "long", "bit"],
  ...FORMS.flatMap(({ kind }) => [kind, ...kind.split("-")]),
]);

/** Reads a quantity as people write it, in the unit of its column when it has none of its own. Nothing is guessed. */
export function readQuantity(column: string, type: QuantityType, text: string): ReadQuantity {
  if (PLAIN_NUMBER.test(text) && !(type === "rotation" && isEither(text))) {
    const value = Number(text);
    return { value, shown: shownAs(type, value), ...noteOn(type, value) };
  }
  const pointed = withDecimalPoint(text, type === "rotation");
  if (pointed.kind === "either") {
    return {
      message: `This may be ${pointed.one} or ${pointed.other}.`,
      accepted: `${pointed.one} or ${pointed.other}, without a sign between thousands`,
    };
  }
  const plain = pointed.text;
  if (type === "length" && BARE_FRACTION.test(plain)) {
    return {
      message: "This fraction has no unit, and may be inches or millimetres.",
      accepted: `a fraction with its unit, such as "${text} in"; a decimal number alone is in mm`,
    };
  }
  if (PLAIN_NUMBER.test(plain))
    return { value: Number(plain), shown: shownAs(type, Number(plain)), ...noteOn(type, Number(plain)) };
  const read = withUnit(type, plain);
  if ("value" in read || type !== "length") return read;
  const bare = withoutWords(column, plain);
  return bare === plain ? read : readQuantity(column, type, bare);
}

function withUnit(type: QuantityType, text: string): ReadQuantity {
  switch (type) {
    case "length": {
      const length = parseLength(text);
      return length.ok ? { value: length.mm, shown: shownAs(type, length.mm) } : unreadable(length, "mm");
    }
    case "path-length": {
      const length = parseLength(text, "m");
      return length.ok ? metres(length.mm / MM_PER_M) : unreadable(length, "m");
    }
    case "mass": {
      const mass = parseMass(text, "g");
      return mass.ok ? { value: mass.g, shown: shownAs(type, mass.g) } : unreadable(mass, "g");
    }
    case "rotation": {
      const speed = parseRotation(text, "rpm");
      return speed.ok ? { value: speed.rpm, shown: shownAs(type, speed.rpm) } : unreadable(speed, "rpm");
    }
    case "angle": {
      const [, digits = ""] = ANGLE.exec(text) ?? [];
      return PLAIN_NUMBER.test(digits)
        ? { value: Number(digits), shown: shownAs(type, Number(digits)) }
        : { message: "This is not an angle.", accepted: 'degrees, such as "45", "22.5 deg" or "45°"' };
    }
    case "number":
      return { message: "This is not a number.", accepted: "a number without a unit" };
  }
}

function metres(value: number): ReadQuantity {
  return { value, shown: shownAs("path-length", value) };
}

/** "8 mm spiral", "Ø 8 mm", "1/2 in shank" in the column of shanks: the size alone. Other words stay, and are refused. */
function withoutWords(column: string, text: string): string {
  const own = column.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`).split(" ");
  const words = text.replace(DIAMETER_SIGN, "").split(/\s+/);
  while (words.length > 1) {
    const last = words.at(-1)?.toLowerCase() ?? "";
    if (!SAYING_NOTHING.has(last) && !own.slice(0, -1).includes(last)) break;
    words.pop();
  }
  return words.join(" ");
}

function shownAs(type: QuantityType, value: number): string {
  switch (type) {
    case "length":
      return `${value} mm (${showIn("imperial").length(value)})`;
    case "path-length":
      return `${value} m`;
    case "mass":
      return `${value} g (${showIn("imperial").mass(value)})`;
    case "rotation":
      return `${value} rpm`;
    case "angle":
      return `${value}°`;
    case "number":
      return String(value);
  }
}

/** A number alone is in the unit that its column's name says. When it may have been meant in inches, the report says so. */
function noteOn(type: QuantityType, value: number): { readonly note?: string } {
  if (type !== "length" || value <= 0 || value > MOST_BARE_INCHES) return {};
  const inInchesMm = Number((value * MM_PER_INCH).toPrecision(12));
  return {
    note: `Read in mm, the unit of its column. If inches are meant, write "${value} in", which is ${inInchesMm} mm.`,
  };
}

function isEither(text: string): boolean {
  return withDecimalPoint(text, true).kind === "either";
}

function unreadable({ fault }: { readonly fault: Fault }, unit: string): ReadQuantity {
  const { message, accepted } = describeFault(fault);
  return { message, accepted: `${accepted}; a number alone is in ${unit}` };
}
