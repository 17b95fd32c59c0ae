import { hash } from "node:crypto";
import { canonicalText } from "./canonical.ts";

/** What the hash of an event covers: all of it, and through `previousHash` all that came before. */
export type ChainedContent = {
  readonly sequence: number;
  readonly at: string;
  readonly by: string;
  readonly requestId: string;
  readonly type: string;
  readonly subjectId: string;
  readonly subjectVersion: number;
  readonly data: Readonly<Record<string, unknown>>;
  readonly previousHash: string;
  /** Absent, and not hashed, if no reason was given. */
  readonly why?: string;
  /** Digest of the record after it. Absent, and not hashed, of a removal, and of events from before there were digests. */
  readonly recordDigest?: string;
};

/** What stands before the first event. */
export const FIRST_PREVIOUS_HASH = "0".repeat(64);

/** The later of two times. In UTC with milliseconds, as events keep them, they sort as text. */
export function laterOf(one: string, other: string): string {
  if (one > other) return one;
  return other;
}

/** SHA-256, in hex, of the event in canonical JSON (RFC 8785). */
export function eventHash(content: ChainedContent): string {
  return hash("sha256", canonicalText(content));
}
