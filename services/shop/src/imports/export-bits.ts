import { pipeline, Readable } from "node:stream";
import { stringify } from "csv-stringify";
import type { BitReads } from "../bits/reads.ts";
import type { BitRecord } from "../bits/schema.ts";
import { canonicalText } from "../http/canonical.ts";
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
export function exportBits(bits: Pick<BitReads, "page">, format: Format): Readable {
  if (format === "ndjson") return Readable.from(jsonLines(bits));
  // What ends one ends the other, and whoever sends the text is told of it.
  return pipeline(Readable.from(csvRecords(bits)), stringify(CSV_OPTIONS), () => {});
}

async function* csvRecords(bits: Pick<BitReads, "page">) {
  yield COLUMN_NAMES;
  for await (const bit of allOf(bits)) {
    yield [bit.id, ...COLUMNS.map((column) => writeCell(column, valueAt(bit, column)))];
  }
}

async function* jsonLines(bits: Pick<BitReads, "page">) {
  for await (const bit of allOf(bits)) yield canonicalText({ id: bit.id, ...fieldsOf(bit) }) + LINE_FEED;
}

async function* allOf({ page }: Pick<BitReads, "page">): AsyncGenerator<BitRecord> {
  let after = "";
  for (;;) {
    const bits = await page(after, BITS_IN_A_PAGE);
    yield* bits;
    const last = bits.at(-1);
    if (last === undefined || bits.length < BITS_IN_A_PAGE) return;
    after = last.id;
  }
}

function valueAt(bit: BitRecord, { path: [first, second] }: Column): unknown {
  const value: unknown = Reflect.get(bit, first);
  if (second === undefined) return value;
  return typeof value === "object" && value !== null ? Reflect.get(value, second) : undefined;
}
