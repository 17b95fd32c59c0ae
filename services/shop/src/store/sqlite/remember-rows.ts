import type { RawRow } from "../readers.ts";
import type { Rows } from "./answer.ts";

/** Questions about one record or a short list are asked again and again; long answers would fill the memory. */
const MOST_ROWS = 4;
const MOST_CHARACTERS = 16_384;
const MOST_ANSWERS = 256;

/**
 * Keeps the short answers of a query until the store's mark is another one. Reading one row costs SQLite its locks and its
 * look at the log each time, several times what finding it here does.
 */
export function rememberRows(mark: () => number): (rows: Rows) => Rows {
  let markOfFound = mark();
  let answers = 0;
  const found = new Map<Rows, Map<string, readonly RawRow[]>>();

  function forgetIfChanged(): void {
    const now = mark();
    if (now === markOfFound && answers < MOST_ANSWERS) return;
    found.clear();
    answers = 0;
    markOfFound = now;
  }

  return (rows) => (values) => {
    forgetIfChanged();
    const asked = JSON.stringify(values);
    const known = found.get(rows)?.get(asked);
    if (known !== undefined) return known;
    const answer = rows(values);
    if (isShort(answer)) {
      const ofQuery = found.get(rows) ?? new Map<string, readonly RawRow[]>();
      found.set(rows, ofQuery.set(asked, answer));
      answers += 1;
    }
    return answer;
  };
}

/** No pictures and no long texts. */
function isShort(rows: readonly RawRow[]): boolean {
  if (rows.length > MOST_ROWS) return false;
  let characters = 0;
  for (const cell of rows.flat()) {
    if (Buffer.isBuffer(cell)) return false;
    if (typeof cell === "string") characters += cell.length;
  }
  return characters <= MOST_CHARACTERS;
}
