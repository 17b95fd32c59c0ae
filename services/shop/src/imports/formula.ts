/**
 * What a spreadsheet takes for the beginning of a formula: = + - @, tab, carriage return and line feed, and the full-width forms
 * of the signs; with any apostrophes before it. Source: OWASP, "CSV Injection" (from memory).
 */
const BEGINS_FORMULA = /^'*[=+\-@\t\r\n＝＋－＠]/;

/**
 * A spreadsheet of a country that writes 0,5 cuts the same file at semicolons, another at tabs, both past our quotes, and every row
 * at line ends: what follows one of those may begin a cell, in quotes or not.
 */
const MAY_BEGIN_FORMULA = /([;\t\r\n])(?=["']*[=+\-@＝＋－＠])/g;
const KEPT_FROM_BEGINNING = /([;\t\r\n])'(?=["']*[=+\-@＝＋－＠])/g;

/** A text as a cell that no spreadsheet reckons: an apostrophe before whatever would begin a formula. */
export function withoutFormula(text: string): string {
  const within = text.replaceAll(MAY_BEGIN_FORMULA, "$1'");
  return BEGINS_FORMULA.test(within) ? `'${within}` : within;
}

/** The text that `withoutFormula` made a cell of; any other cell as it is. */
export function formulaTextOf(cell: string): string {
  const within = cell.startsWith("'") && BEGINS_FORMULA.test(cell) ? cell.slice(1) : cell;
  return within.replaceAll(KEPT_FROM_BEGINNING, "$1");
}
