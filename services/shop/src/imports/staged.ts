import { readSync } from "node:fs";
import { bitQueryColumns } from "../bits/query-columns.ts";
import type { Change } from "../store/port.ts";
import { rowChange, type Written } from "./decide.ts";
import { openScratchFile } from "./scratch-file.ts";

type Line = { readonly decision: Written; readonly queryColumns: ReturnType<typeof bitQueryColumns> };

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
      const line: Line = { decision, queryColumns: bitQueryColumns(decision.record) };
      waiting += JSON.stringify(line) + LINE_FEED;
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
    const { decision, queryColumns }: Line = JSON.parse(text);
    yield rowChange(decision, queryColumns);
  }
}

/** Reads while a transaction is open, where nothing may be waited for. */
function* linesIn(descriptor: number): Generator<string> {
  const piece = Buffer.alloc(PIECE_BYTES);
  let rest = Buffer.alloc(0);
  let position = 0;
  for (;;) {
    const length = readSync(descriptor, piece, 0, PIECE_BYTES, position);
    if (length === 0) return;
    position += length;
    const bytes = Buffer.concat([rest, piece.subarray(0, length)]);
    let start = 0;
    for (let end = bytes.indexOf(LINE_FEED); end >= 0; end = bytes.indexOf(LINE_FEED, start)) {
      yield bytes.toString("utf8", start, end);
      start = end + 1;
    }
    rest = bytes.subarray(start);
  }
}
