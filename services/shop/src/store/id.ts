import { randomFillSync } from "node:crypto";
import { v7 } from "uuid";

/** As many random bytes as a UUID asks for, and how many UUIDs are served by one call of the operating system. */
const BYTES = 16;
const SERVED = 256;

const random = Buffer.alloc(BYTES * SERVED);
let taken = random.length;
let last = { msecs: Number.NEGATIVE_INFINITY, seq: 0 };

/** A new UUID version 7 (RFC 9562): later ones sort after earlier ones, even within a millisecond and when the clock goes back. */
export function newUuid(): string {
  const bytes = randomBytes();
  const now = Date.now();
  last =
    now > last.msecs
      ? { msecs: now, seq: bytes.readUInt32BE() >>> 1 }
      : { msecs: last.msecs, seq: last.seq + 1 };
  return v7({ random: bytes, ...last });
}

/** A new id such as `bit_0192…`: the prefix says what it names, the rest, a UUID version 7, sorts by time. */
export function newId(prefix: string): string {
  return `${prefix}_${newUuid().replaceAll("-", "")}`;
}

function randomBytes(): Buffer {
  if (taken === random.length) {
    randomFillSync(random);
    taken = 0;
  }
  taken += BYTES;
  return random.subarray(taken - BYTES, taken);
}
