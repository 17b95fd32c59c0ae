/**
 * What a spreadsheet takes for the beginning of a formula: = + - @, tab, carriage return and line feed, and the full-width forms
 * of the signs; with any apostrophes before it. Source: OWASP, "CSV Injection" (from memory).
 */
const BEGINS_FORMULA = /^'*[=+\-@\t\r\n＝＋－＠]/;

/** A text as a cell that no spreadsheet reckons: an apostrophe before what would begin a formula. */
export function withoutFormula(text: string): string {
  return BEGINS_FORMULA.test(text) ? `'${text}` : text;
}

/** The text that `withoutFormula` made a cell of; any other cell as it is. */
export function formulaTextOf(cell: string): string {
  return cell.startsWith("'") && BEGINS_FORMULA.test(cell) ? cell.slice(1) : cell;
}
