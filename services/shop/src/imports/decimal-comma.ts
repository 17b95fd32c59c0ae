/** A number as it stands in a text, or two numbers that it may be. */
export type Pointed =
  | { readonly kind: "clear"; readonly text: string }
  | { readonly kind: "either"; readonly one: string; readonly other: string };

/** "1.234,5": thousands by points, then a decimal comma. */
const POINTS_THEN_COMMA = /(?<![\d.,])(\d{1,3}(?:\.\d{3})+),(\d+)(?![\d.,])/;
/** One comma in a number, and no point. */
const ONE_COMMA = /(?<![\d.,])(\d*),(\d+)(?![\d.,])/;
/** What may be thousands or a number with three decimals. */
const ONE_GROUP = /(?<![\d.,])([1-9]\d{0,2})([.,])(\d{3})(?![\d.,])/;

/**
 * A text with the decimal commas of its number written as points. "8,5" is 8.5; "1,234" may be 1234 or 1.234, and so may
 * "22.000" when it counts something that nobody gives three decimals of.
 */
export function withDecimalPoint(text: string, isCount: boolean): Pointed {
  const both = POINTS_THEN_COMMA.exec(text);
  if (both !== null) {
    const [whole, thousands = "", decimals = ""] = both;
    return { kind: "clear", text: text.replace(whole, `${thousands.replaceAll(".", "")}.${decimals}`) };
  }
  const [group, thousands = "", sign = "", rest = ""] = ONE_GROUP.exec(text) ?? [];
  // Turns per minute are grouped by commas; lengths and masses have decimals.
  if (group !== undefined && (sign === ".") === isCount) {
    const other = isCount ? `${thousands},${rest}` : `${thousands}.${rest}`;
    return { kind: "either", one: `${thousands}${rest}`, other: isCount ? thousands : other };
  }
  if (group !== undefined) return { kind: "clear", text };
  return {
    kind: "clear",
    text: text.replace(ONE_COMMA, (_, whole, decimals) => `${whole || "0"}.${decimals}`),
  };
}
