import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { CsvError, parse } from "csv-parse";
import { readCell } from "./cells.ts";
import { COLUMN_NAMES, COLUMNS, type Column, ID_COLUMN } from "./columns.ts";
import { linesOf, MOST_LINE_BYTES } from "./lines.ts";
import { idFaults, NOT_UTF8, type Row, type RowFault, TOO_LONG } from "./rows.ts";

/** A cell is undefined where nothing stands in it, and empty where an empty text does: "". */
type Cell = string | undefined;

/** A record of the file, and the text it was read from without the line end. */
type Parsed = { readonly record: readonly Cell[]; readonly raw: string };

/** What each cell of a row belongs to: a column, or the id. */
type Header = readonly (Column | typeof ID_COLUMN)[];

const OPTIONS = {
  record_delimiter: ["\r\n", "\n"],
  relax_column_count: true,
  // 3 1/2" is what people write, quoted or not.
  relax_quotes: true,
  max_record_size: MOST_LINE_BYTES,
  raw: true,
  cast: (text: string, { quoting }: { readonly quoting: boolean }) =>
    text === "" && !quoting ? undefined : text,
};

/** The rows of a CSV file (RFC 4180) whose first line names its columns, in any order. */
export async function* csvRows(source: AsyncIterable<Buffer>): AsyncGenerator<Row> {
  const lines = checkedLines(source);
  let header: Header | undefined;
  let line = 1;
  try {
    for await (const { record, raw } of recordsOf(lines.texts)) {
      const nextLine = line + linesIn(raw);
      const isUtf8 = lines.areUtf8Before(nextLine);
      if (header === undefined) {
        const faults = isUtf8 ? headerFaults(record) : [NOT_UTF8];
        if (faults.length > 0) return yield { kind: "broken", line, faults };
        header = headerOf(record);
      } else if (!isUtf8) {
        yield { kind: "unreadable", line, faults: [NOT_UTF8] };
      } else if (record.some((cell) => cell !== undefined)) {
        yield rowOf(line, header, record);
      }
      line = nextLine;
    }
  } catch (error) {
    if (!(error instanceof CsvError || error instanceof LineTooLong)) throw error;
    return yield { kind: "broken", line, faults: [breakOf(error)] };
  }
  if (header === undefined) yield { kind: "broken", line, faults: [NO_HEADER] };
}

class LineTooLong extends Error {}

const KNOWN_COLUMNS = `a first line that names columns among: ${COLUMN_NAMES.join(", ")}`;

const NO_HEADER: RowFault = { message: "The file is empty.", accepted: KNOWN_COLUMNS };

/** Text for the parser, and which of its lines were not text. A bad line still counts, so that the next is found. */
function checkedLines(source: AsyncIterable<Buffer>) {
  const notUtf8: number[] = [];
  async function* texts() {
    for await (const { number, bytes, isUtf8, isTooLong } of linesOf(source)) {
      if (isTooLong) throw new LineTooLong();
      if (!isUtf8) notUtf8.push(number);
      yield bytes;
    }
  }
  return {
    texts: texts(),
    /** Whether all lines before this one, and after those asked about before, are UTF-8. */
    areUtf8Before: (line: number): boolean => {
      const isBefore = (number: number | undefined) => number !== undefined && number < line;
      const areGood = !isBefore(notUtf8[0]);
      while (isBefore(notUtf8[0])) notUtf8.shift();
      return areGood;
    },
  };
}

async function* recordsOf(texts: AsyncIterable<Buffer>): AsyncGenerator<Parsed> {
  const parser = parse(OPTIONS);
  // What breaks the pipeline breaks the parser, and is thrown where its records are read.
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
      return [{ column, message: "This column is not known.", accepted: KNOWN_COLUMNS }];
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
    const accepted = `${header.length} cells, as the first line has; quote a cell that holds a comma`;
    return { kind: "unreadable", line, faults: [{ message, accepted }] };
  }
  const faults: RowFault[] = [];
  const values = new Map<Column, unknown>();
  let id: string | undefined;
  for (const [index, column] of header.entries()) {
    if (column === ID_COLUMN) {
      id = nameIn(record[index]) || undefined;
      faults.push(...idFaults(id, ID_COLUMN));
      continue;
    }
    const read = readCell(column, record[index]);
    if (read.ok) values.set(column, read.value);
    else faults.push(read.fault);
  }
  if (faults.length > 0) return { kind: "unreadable", line, faults };
  return { kind: "row", line, id, content: { kind: "columns", values } };
}

function breakOf(error: CsvError | LineTooLong): RowFault {
  if (error instanceof LineTooLong || error.code === "CSV_MAX_RECORD_SIZE") return TOO_LONG;
  return {
    message: "A quote that opens here is never closed.",
    accepted: 'cells in RFC 4180 form: a quote within a quoted cell is written twice, ""',
  };
}

function linesIn(raw: string): number {
  return raw.split("\n").length;
}
