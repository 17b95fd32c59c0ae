import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { type Parser, parse } from "csv-parse";
import { readCell, shortened } from "./cells.ts";
import { COLUMN_NAMES, COLUMNS, type Column, ID_COLUMN } from "./columns.ts";
import { type Line, linesOf, MOST_LINE_BYTES } from "./lines.ts";
import { nearestName } from "./nearest.ts";
import {
  idFaults,
  NOT_UTF8,
  type Reading,
  type Row,
  type RowFault,
  TOO_LONG,
  TOO_MANY_EMPTY,
} from "./rows.ts";

/** A cell is undefined if nothing stands in it, and empty if an empty text does: "". */
type Cell = string | undefined;

/** A record of the file, and the text it was read from. */
type Parsed = { readonly record: readonly Cell[]; readonly raw: string };

/** What each cell of a row belongs to: a column, or the id. */
type Header = readonly (Column | typeof ID_COLUMN)[];

/** What may stand between cells: in the order of preference when the first line does not say. */
const SEPARATORS = [",", ";", "\t"];

const OPTIONS = {
  record_delimiter: ["\r\n", "\n"],
  relax_column_count: true,
  // 3 1/2" is what people write, quoted or not.
  relax_quotes: true,
  max_record_size: MOST_LINE_BYTES,
  skip_records_with_error: true,
  raw: true,
  cast: (text: string, { quoting }: { readonly quoting: boolean }) =>
    text === "" && !quoting ? undefined : text,
};

const KNOWN_COLUMNS = `a first line that names columns among: ${COLUMN_NAMES.join(", ")}`;

/** No row of this service has nearly so many cells, even with what spreadsheets leave at its end: from here on it is no table. */
const MOST_CELLS = 300;

const TOO_MANY_CELLS: RowFault = {
  message: "This row has too many cells. From here on nothing was read.",
  accepted: `at most ${MOST_CELLS} cells, empty ones at the end among them`,
};

const NO_HEADER: RowFault = { message: "The file is empty.", accepted: KNOWN_COLUMNS };

const NEVER_CLOSED: RowFault = {
  message: "A quote that opens here is never closed.",
  accepted: 'cells in RFC 4180 form: a quote within a quoted cell is written twice, ""',
};

/** The rows of a CSV file (RFC 4180) whose first line names its columns, in any order. */
export async function* csvRows(source: AsyncIterable<Buffer>): AsyncGenerator<Row> {
  const file = await readableFile(source);
  let header: Header | undefined;
  let line = 1;
  for await (const { record, raw } of file.records) {
    const nextLine = line + linesIn(raw);
    const isUtf8 = file.isUtf8Before(nextLine);
    if (record.length > MOST_CELLS) return yield { kind: "broken", line, faults: [TOO_MANY_CELLS] };
    if (header === undefined) {
      const names = withoutEmptyEnd(record, 0);
      const faults = isUtf8 ? headerFaults(names) : [NOT_UTF8];
      if (faults.length > 0) return yield { kind: "broken", line, faults };
      header = headerOf(names);
    } else if (!isUtf8) {
      yield { kind: "unreadable", line, faults: [NOT_UTF8] };
    } else if (record.some((cell) => cell !== undefined)) {
      yield rowOf(line, header, withoutEmptyEnd(record, header.length));
    }
    line = nextLine;
  }
  const end = file.breaksWith() ?? (header === undefined ? NO_HEADER : undefined);
  if (end !== undefined) yield { kind: "broken", line, faults: [end] };
}

/**
 * The records of a file as far as it can be read, what ended them before its end, and which of its lines were not
 * text. Such a line is parsed all the same, so that the next is found.
 */
async function readableFile(source: AsyncIterable<Buffer>) {
  const lines = linesOf(source);
  const first = await lines.next();
  const notUtf8: number[] = [];
  let cutShortBy: RowFault | undefined;
  let notParsed: RowFault | undefined;

  async function* texts() {
    for await (const { number, bytes, isUtf8, isTooLong, isOneEmptyTooMany } of following(first, lines)) {
      if (isTooLong) cutShortBy = TOO_LONG;
      else if (isOneEmptyTooMany) cutShortBy = TOO_MANY_EMPTY;
      if (cutShortBy !== undefined || notParsed !== undefined) return;
      if (!isUtf8) notUtf8.push(number);
      yield bytes;
    }
  }

  const parser = parse({
    ...OPTIONS,
    delimiter: first.done === true ? "," : separatorOf(first.value.bytes.toString()),
    // If a record cannot be parsed, nobody knows where the next begins.
    on_record: (record) => (notParsed === undefined ? record : undefined),
    on_skip: (error) => {
      notParsed ??= error?.code === "CSV_MAX_RECORD_SIZE" ? TOO_LONG : NEVER_CLOSED;
      return undefined;
    },
  });
  return {
    records: recordsOf(texts(), parser),
    breaksWith: () => cutShortBy ?? notParsed,
    /** Whether all lines before this one, and after those asked about before, are UTF-8. */
    isUtf8Before: (line: number): boolean => {
      const isBefore = (number: number | undefined) => number !== undefined && number < line;
      const isGood = !isBefore(notUtf8[0]);
      while (isBefore(notUtf8[0])) notUtf8.shift();
      return isGood;
    },
  };
}

/** The line that was read beforehand, then the others. */
async function* following(first: IteratorResult<Line>, others: AsyncIterable<Line>): AsyncGenerator<Line> {
  if (first.done === true) return;
  yield first.value;
  yield* others;
}

/** What stands between the names of the first line: the sign that is there most often. */
function separatorOf(firstLine: string): string {
  const names = firstLine.replaceAll(/"[^"]*"/g, "");
  const counts = SEPARATORS.map((separator) => names.split(separator).length);
  return SEPARATORS[counts.indexOf(Math.max(...counts))] ?? ",";
}

/** A record without the empty cells at its end that are beyond so many: spreadsheets leave them behind. */
function withoutEmptyEnd(record: readonly Cell[], least: number): readonly Cell[] {
  let length = record.length;
  while (length > least && nameIn(record[length - 1]) === "") length -= 1;
  return record.slice(0, length);
}

async function* recordsOf(texts: AsyncIterable<Buffer>, parser: Parser): AsyncGenerator<Parsed> {
  // What breaks the pipeline breaks the parser, and is thrown to whoever reads its records.
  const feeding = pipeline(Readable.from(texts), parser).catch(() => {});
  try {
    for await (const parsed of parser) yield parsed;
  } finally {
    parser.destroy();
    await feeding;
  }
}

function headerFaults(record: readonly Cell[]): RowFault[] {
  const names = record.map(nameIn);
  return names.flatMap((name, index): RowFault[] => {
    const column = name === "" ? `column ${index + 1}` : name;
    if (!COLUMN_NAMES.includes(name)) {
      const nearest = nearestName(name, COLUMN_NAMES);
      const message = `This column is not known.${nearest === undefined ? "" : ` Is ${nearest} meant?`}`;
      const fault = { column: shortened(column), given: shortened(name), message, accepted: KNOWN_COLUMNS };
      return [nearest === undefined ? fault : { ...fault, nearest }];
    }
    if (names.indexOf(name) === index) return [];
    return [{ column, message: "This column is there twice.", accepted: "each column once" }];
  });
}

function headerOf(record: readonly Cell[]): Header {
  return record.map((cell) => COLUMNS.find(({ name }) => name === nameIn(cell)) ?? ID_COLUMN);
}

function nameIn(cell: Cell): string {
  return cell?.trim() ?? "";
}

function rowOf(line: number, header: Header, record: readonly Cell[]): Row {
  if (record.length !== header.length) {
    const message = `This row has ${record.length} cells.`;
    const accepted = `${header.length} cells, as the first line has; quote a cell that holds what stands between cells`;
    return { kind: "unreadable", line, faults: [{ message, accepted }] };
  }
  const faults: RowFault[] = [];
  const readings: Reading[] = [];
  const values = new Map<Column, unknown>();
  const given = new Map<string, string>();
  let id: string | undefined;
  for (const [index, column] of header.entries()) {
    if (column === ID_COLUMN) {
      id = nameIn(record[index]) || undefined;
      faults.push(...idFaults(id, ID_COLUMN));
      continue;
    }
    const read = readCell(column, record[index]);
    given.set(column.name, record[index] ?? "");
    if (!read.ok) faults.push(read.fault);
    // What was probably meant stands in for it, so that the rest can be looked at: the row is refused all the same.
    values.set(column, read.ok ? read.value : read.standIn);
    if (read.ok && read.reading !== undefined) readings.push(read.reading);
  }
  // Without its id nobody knows which bit the rest is said of.
  if (idFaults(id, ID_COLUMN).length > 0) return { kind: "unreadable", line, faults };
  return { kind: "row", line, id, content: { kind: "columns", values, given }, faults, readings };
}

/** The text may end with its line end, or with a part of it. */
function linesIn(raw: string): number {
  return raw.replace(/\n$/, "").split("\n").length;
}
