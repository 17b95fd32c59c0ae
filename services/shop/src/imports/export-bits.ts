import { pipeline, Readable } from "node:stream";
import { stringify } from "csv-stringify";
import { bits } from "../bits/reads.ts";
import type { BitRecord } from "../bits/schema.ts";
import { canonicalText } from "../store/canonical.ts";
import type { Answer } from "../store/store.ts";
import { writeCell } from "./cells.ts";
import { COLUMN_NAMES, COLUMNS, type Column } from "./columns.ts";
import { fieldsOf } from "./decide.ts";
import type { Format } from "./schema.ts";

/** Bits read from the database at once. */
const BITS_IN_A_PAGE = 100;

const LINE_FEED = "\n";

/** An empty text is written as "", which is not the same as nothing. */
const CSV_OPTIONS = {
  record_delimiter: "\r\n",
  quoted_match: /[\r\n]/,
  cast: { string: (text: string) => (text === "" ? { value: text, quoted_empty: true } : text) },
} as const;

/** Every bit in order of its id as a file, made as it is read. The same bits give the same bytes. */
export function exportBits(answer: Answer, format: Format): Readable {
  if (format === "ndjson") return Readable.from(jsonLines(answer));
  // What ends one ends the other, and the sender of the text sees it.
  return pipeline(Readable.from(csvRecords(answer)), stringify(CSV_OPTIONS), () => {});
}

async function* csvRecords(answer: Answer) {
  yield COLUMN_NAMES;
  for await (const bit of allOf(answer)) {
    yield [bit.id, ...COLUMNS.map((column) => writeCell(column, valueAt(bit, column)))];
  }
}

async function* jsonLines(answer: Answer) {
  for await (const bit of allOf(answer)) yield canonicalText({ id: bit.id, ...fieldsOf(bit) }) + LINE_FEED;
}

async function* allOf(answer: Answer): AsyncGenerator<BitRecord> {
  let after = "";
  for (;;) {
    const page = await answer(bits.page(after, BITS_IN_A_PAGE));
    yield* page;
    const last = page.at(-1);
    if (last === undefined || page.length < BITS_IN_A_PAGE) return;
    after = last.id;
  }
}

function valueAt(bit: BitRecord, { path: [first, second] }: Column): unknown {
  const value: unknown = Reflect.get(bit, first);
  if (second === undefined) return value;
  return typeof value === "object" && value !== null ? Reflect.get(value, second) : undefined;
}
