import { isUtf8 } from "node:buffer";

/** One line of a file, with its line end. */
export type Line = {
  /** Its number, from 1. */
  readonly number: number;
  /** Empty if the line is too long. */
  readonly bytes: Buffer;
  readonly isUtf8: boolean;
  readonly isTooLong: boolean;
  /** Nothing stands in it, as in so many before it that nothing after it is read. */
  readonly isOneEmptyTooMany: boolean;
};

/** No row of a rack needs more, and a file without line ends must not fill the memory. */
export const MOST_LINE_BYTES = 64 * 1024;

/** Spreadsheets leave empty rows behind, by the hundred; a file of nothing else must not be read for minutes. */
export const MOST_EMPTY_LINES = 10_000;
export const MOST_EMPTY_KIB = 256;

const LINE_FEED = 0x0a;
/** What empty rows are written with: separators, quotes, spaces and line ends. */
const OF_EMPTY_ROWS = new Set(Buffer.from(',;\t" \r\n'));
const BYTE_ORDER_MARK = Buffer.from([0xef, 0xbb, 0xbf]);

/** The lines of a file, without the byte-order mark it may begin with. */
export async function* linesOf(source: AsyncIterable<Buffer>): AsyncGenerator<Line> {
  let pieces: Buffer[] = [];
  let length = 0;
  let number = 0;
  const empty = { lines: 0, bytes: 0 };

  function add(piece: Buffer): void {
    length += piece.length;
    if (length <= MOST_LINE_BYTES) pieces.push(piece);
    else pieces = [];
  }

  function finished(): Line {
    number += 1;
    const whole = Buffer.concat(pieces);
    const isTooLong = length > MOST_LINE_BYTES;
    pieces = [];
    length = 0;
    const bytes = number === 1 ? withoutMark(whole) : whole;
    if (!isTooLong && isEmpty(bytes)) {
      empty.lines += 1;
      empty.bytes += bytes.length;
    }
    const isOneEmptyTooMany = empty.lines > MOST_EMPTY_LINES || empty.bytes > MOST_EMPTY_KIB * 1024;
    return { number, bytes, isUtf8: isUtf8(bytes), isTooLong, isOneEmptyTooMany };
  }

  for await (const chunk of source) {
    let start = 0;
    for (let end = chunk.indexOf(LINE_FEED); end >= 0; end = chunk.indexOf(LINE_FEED, start)) {
      add(chunk.subarray(start, end + 1));
      const line = finished();
      yield line;
      if (line.isOneEmptyTooMany) return;
      start = end + 1;
    }
    if (start < chunk.length) add(chunk.subarray(start));
  }
  if (length > 0) yield finished();
}

function isEmpty(bytes: Buffer): boolean {
  return bytes.every((byte) => OF_EMPTY_ROWS.has(byte));
}

function withoutMark(bytes: Buffer): Buffer {
  const isMarked = bytes.subarray(0, BYTE_ORDER_MARK.length).equals(BYTE_ORDER_MARK);
  return isMarked ? bytes.subarray(BYTE_ORDER_MARK.length) : bytes;
}
