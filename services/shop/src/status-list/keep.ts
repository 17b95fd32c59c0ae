import { setImmediate } from "node:timers/promises";
import type { Signer } from "../signing/signer.ts";
import type { Answer, Mark, Store } from "../store/store.ts";
import { statusPayload } from "./pack.ts";
import { ENDED, type Ended, endedAfter, MOST_AT_ONCE, takenPlaces } from "./reads.ts";
import { STATUS_TYPE } from "./schema.ts";

/** How long one signature serves when nothing changed. */
const SIGNED_FOR_MS = 60_000;

/** Some settings end by the clock alone: so often the list is read again when nothing was written. */
const READ_FOR_MS = 1000;

type Parts = {
  readonly answer: Answer;
  readonly mark: Store["mark"];
  readonly signer: Signer;
  readonly url: string;
};

type Kept = {
  readonly mark: Mark;
  readonly readAtMs: number;
  readonly signedAtMs: number;
  readonly signedBy: string;
  /** What it says, to see whether another one says the same. */
  readonly content: string;
  readonly bytes: Buffer;
};

/**
 * The answer with the signed status list, kept ready: read again after a write or a second, signed again when it says something
 * else, when a minute has passed or another key signs. Those who ask at once wait for one reading.
 */
export function statusListKeeper({ answer, mark, signer, url }: Parts): (at: Date) => Promise<Buffer> {
  let kept: Kept | undefined;
  let running: { readonly mark: Mark; readonly kept: Promise<Kept> } | undefined;

  async function read(at: Date, markBefore: Mark): Promise<Kept> {
    const ended = await readEnded(answer, at.toISOString());
    const places = await answer(takenPlaces());
    const { kid, sign } = await signer.signing();
    const found = { mark: markBefore, readAtMs: at.getTime(), signedBy: kid, content: `${places} ${ended}` };
    const isFresh = kept !== undefined && Math.abs(found.readAtMs - kept.signedAtMs) < SIGNED_FOR_MS;
    if (kept !== undefined && isFresh && kept.content === found.content && kept.signedBy === found.signedBy) {
      return { ...kept, mark: markBefore, readAtMs: found.readAtMs };
    }
    const jws = await sign(statusPayload(ended, places, url, at), STATUS_TYPE);
    return { ...found, signedAtMs: found.readAtMs, bytes: Buffer.from(JSON.stringify({ jws })) };
  }

  function holdsStill({ mark: markThen, readAtMs }: Kept, at: Date, now: Mark) {
    const isRead = Math.abs(at.getTime() - readAtMs) < READ_FOR_MS;
    return markThen === now && isRead;
  }

  return async (at) => {
    const now = await mark();
    if (kept !== undefined && holdsStill(kept, at, now)) return kept.bytes;
    // What was begun before a write is no answer to who asks after it.
    if (running === undefined || running.mark !== now) {
      running = { mark: now, kept: read(at, now) };
    }
    const mine = running;
    try {
      kept = await mine.kept;
      return kept.bytes;
    } finally {
      if (running === mine) running = undefined;
    }
  };
}

async function readEnded(answer: Answer, at: string): Promise<number[]> {
  const places: number[] = [];
  for (const part of ENDED) {
    let last: Ended | undefined;
    do {
      const page: readonly Ended[] = await answer(endedAfter(part, last, at));
      for (const { place } of page) places.push(place);
      last = page.length === MOST_AT_ONCE ? page.at(-1) : undefined;
      // Others have their turn between two pages.
      if (last !== undefined) await setImmediate();
    } while (last !== undefined);
  }
  return places;
}
