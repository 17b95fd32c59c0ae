import crypto from "node:crypto";
import { syncBuiltinESMExports } from "node:module";
import { type Random, randomFrom } from "../fuzz/random.ts";

/**
 * Loaded in a process of its own: a wall clock and a source of randomness that follow from a seed alone, so
 * that two processes make the same ids, keys and salts.
 */
const START_MS = Date.UTC(2026, 2, 2, 8);
const SECOND_MS = 1000;

let random: Random = randomFrom(0);
let nowMs = START_MS;

/** A second has passed, and what is random from here on follows from these numbers. */
export function nextMoment(seed: number, number: number): void {
  nowMs += SECOND_MS;
  random = randomFrom(seed * 1_000_003 + number);
}

function filled<Bytes extends Uint8Array>(bytes: Bytes): Bytes {
  for (let index = 0; index < bytes.length; index += 1) bytes[index] = random.below(256);
  return bytes;
}

Object.assign(crypto, {
  randomFillSync: filled,
  randomBytes: (count: number) => filled(Buffer.alloc(count)),
});
syncBuiltinESMExports();

Date.now = () => nowMs;
globalThis.Date = new Proxy(Date, {
  construct: (target, given) =>
    given.length === 0 ? new target(target.now()) : Reflect.construct(target, given),
});
