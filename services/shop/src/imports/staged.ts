import { readSync } from "node:fs";
import type { Change } from "../store/port.ts";
import { stagedChange, type Written } from "./decide.ts";
import { openScratchFile } from "./scratch-file.ts";

/** Decided changes on the disk, waiting to be written all at once. */
export type Staged = {
  readonly add: (decision: Written) => Promise<void>;
  /** Every change in order, read from the disk as it is asked for. */
  readonly changes: () => Promise<Iterable<Change>>;
  readonly close: () => Promise<void>;
};

const PIECE_BYTES = 64 * 1024;
const LINE_FEED = "\n";

/** A place for changes whose number no memory should depend on. */
export async function openStaged(): Promise<Staged> {
  const file = await openScratchFile();
  let waiting = "";

  async function flush(): Promise<void> {
    await file.appendFile(waiting);
    waiting = "";
  }

  return {
    add: async (decision) => {
      waiting += JSON.stringify(decision) + LINE_FEED;
      if (waiting.length >= PIECE_BYTES) await flush();
    },
    changes: async () => {
      await flush();
      return changesIn(file.fd);
    },
    close: () => file.close(),
  };
}

function* changesIn(descriptor: number): Generator<Change> {
  for (const text of linesIn(descriptor)) {
    const decision: Written = JSON.parse(text);
    yield stagedChange(decision);
  }
}

/** Reads while a transaction is open, which must not wait for anything. One piece of memory serves for all lines. */
function* linesIn(descriptor: number): Generator<string> {
  let piece = Buffer.alloc(PIECE_BYTES);
  let filled = 0;
  for (let position = 0; ; ) {
    // A line longer than the piece needs a larger one.
    if (filled === piece.length) piece = Buffer.concat([piece], 2 * piece.length);
    const length = readSync(descriptor, piece, filled, piece.length - filled, position);
    if (length === 0) return;
    position += length;
    const bytes = piece.subarray(0, filled + length);
    let start = 0;
    for (let end = bytes.indexOf(LINE_FEED); end >= 0; end = bytes.indexOf(LINE_FEED, start)) {
      yield bytes.toString("utf8", start, end);
      start = end + 1;
    }
    piece.copyWithin(0, start, bytes.length);
    filled = bytes.length - start;
  }
}
