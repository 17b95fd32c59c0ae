import { setImmediate as nextTurn } from "node:timers/promises";
import type { KeptCheckpoint } from "../checkpoints/kept.ts";
import { checkpoints, type StatedCheckpoint } from "../checkpoints/reads.ts";
import { STATEMENT_TYPE, type Statement } from "../checkpoints/schema.ts";
import { events, type KeptEvent } from "../events/reads.ts";
import type { Signer } from "../signing/signer.ts";
import { canonicalText } from "../store/canonical.ts";
import { eventHash, FIRST_PREVIOUS_HASH, laterOf } from "../store/chain.ts";
import type { Answer } from "../store/store.ts";
import type { RecordProof } from "./records.ts";
import type { BreakReason, Head, Proof } from "./schema.ts";
import { type Link, type Progress, withoutPlanted, withRecords } from "./walk-records.ts";

export type ProofSources = {
  readonly answer: Answer;
  readonly verify: Signer["verify"];
  /** Without it the events alone are proven. */
  readonly records?: RecordProof;
  /** The newest checkpoint that is kept apart from the database, if one is. */
  readonly kept?: () => Promise<KeptCheckpoint | undefined>;
};

/** Events checked before others get their turn. */
const EVENTS_IN_ONE_TURN = 200;
const BEFORE_THE_FIRST: Link = { sequence: 0, hash: FIRST_PREVIOUS_HASH, latestAt: "" };

/**
 * Follows the chain from an event on, at most so many events: recomputes every hash from the row as it is kept, holds every
 * checkpoint about these events, its signature and what it states, against them, and every record against the last event about it.
 * At the end it looks for records that no event is about. Ends at the first thing that is wrong.
 */
export async function proveHistory(
  firstSequence: number,
  mostEvents: number,
  sources: ProofSources,
): Promise<Proof> {
  let progress = await beginning(firstSequence, sources);
  const beyondSequence = firstSequence + mostEvents;
  while (progress.broken === undefined) {
    const next = progress.link.sequence + 1;
    // Looked up before the events are: what it is about must be there by now.
    const beyond = await sources.answer(checkpoints.beyond(progress.link.sequence));
    const most = Math.min(EVENTS_IN_ONE_TURN, beyondSequence - next) || 1;
    const rows = await sources.answer(events.kept(next, most));
    if (rows.length === 0) {
      if (beyond === undefined) return proofOf(firstSequence, await withoutPlanted(progress, sources), null);
      progress = { ...progress, broken: { sequence: next, reason: "event-missing" } };
    } else if (next === beyondSequence) return proofOf(firstSequence, progress, next);
    else progress = await withRecords(next, await followed(rows, progress, sources), sources);
    await nextTurn();
  }
  return proofOf(firstSequence, progress, null);
}

/** The same, and holds the checkpoint that is kept beside the signing keys against the history: it shows an end that was cut off. */
export async function proveWithKept(
  firstSequence: number,
  mostEvents: number,
  head: Head | undefined,
  sources: ProofSources,
): Promise<Proof> {
  const proof = await (head === undefined
    ? proveHistory(firstSequence, mostEvents, sources)
    : proveHistoryWithHead(firstSequence, mostEvents, head, sources));
  const kept = await sources.kept?.();
  if (!proof.isIntact || kept === undefined) return proof;
  if (kept.kind === "stated") return withHead(proof, kept, sources);
  const reason = kept.kind === "key-unknown" ? "checkpoint-key-unknown" : "checkpoint-not-signed";
  const broken = { sequence: Math.max(proof.lastSequence, 1), reason } as const;
  return { ...proof, isIntact: false, nextSequence: null, broken };
}

/** The same, and holds an event that was kept elsewhere against the history as soon as it reaches so far, or ends. */
export async function proveHistoryWithHead(
  firstSequence: number,
  mostEvents: number,
  head: Head,
  sources: ProofSources,
): Promise<Proof> {
  return withHead(await proveHistory(firstSequence, mostEvents, sources), head, sources);
}

async function withHead(proof: Proof, head: Head, sources: ProofSources): Promise<Proof> {
  const isReached = head.sequence <= proof.lastSequence || proof.nextSequence === null;
  if (!proof.isIntact || !isReached) return proof;
  const [row] = await sources.answer(events.kept(head.sequence, 1));
  if (row?.hash === head.hash) return proof;
  const broken =
    row === undefined
      ? ({ sequence: proof.lastSequence + 1, reason: "event-missing" } as const)
      : ({ sequence: head.sequence, reason: "head-differs" } as const);
  return { ...proof, isIntact: false, nextSequence: null, broken };
}

/** The link before the first event to check; the events before that one are not looked at. */
async function beginning(firstSequence: number, { answer }: ProofSources): Promise<Progress> {
  if (firstSequence === 1) return { link: BEFORE_THE_FIRST, checkpoints: 0 };
  const sequence = firstSequence - 1;
  const [row] = await answer(events.kept(sequence, 1));
  if (row?.sequence === sequence) return { link: row, checkpoints: 0 };
  const broken = { sequence, reason: "event-missing" } as const;
  return { link: { ...BEFORE_THE_FIRST, sequence }, checkpoints: 0, broken };
}

function proofOf(
  firstSequence: number,
  { link, checkpoints, broken }: Progress,
  nextSequence: number | null,
): Proof {
  return {
    isIntact: broken === undefined,
    checked: link.sequence - firstSequence + 1,
    firstSequence,
    lastSequence: link.sequence,
    nextSequence,
    checkpoints,
    ...(broken && { broken }),
  };
}

/** One step after the other along these rows, up to the first that is wrong. */
async function followed(
  rows: readonly KeptEvent[],
  from: Progress,
  sources: ProofSources,
): Promise<Progress> {
  let { link, checkpoints: proven } = from;
  const about = await sources.answer(checkpoints.about(link.sequence + 1, link.sequence + rows.length));
  for (const row of rows) {
    const stated = about.filter(({ sequence }) => sequence === row.sequence);
    const reason =
      eventBreak(row, link) ??
      (await missingCheckpoint(row, sources)) ??
      (await checkpointBreak(stated, row, sources));
    if (reason !== undefined) {
      const sequence = reason === "event-missing" ? link.sequence + 1 : row.sequence;
      return { link, checkpoints: proven, broken: { sequence, reason } };
    }
    link = row;
    proven += stated.length;
  }
  return { link, checkpoints: proven };
}

function eventBreak(row: KeptEvent, { sequence, hash, latestAt }: Link): BreakReason | undefined {
  if (row.sequence !== sequence + 1) return "event-missing";
  if (row.hash !== hashOf(row)) return "event-changed";
  if (row.previousHash !== hash) return "chain-broken";
  return row.latestAt === laterOf(row.at, latestAt) ? undefined : "time-changed";
}

/** The hash that the row as it is kept should have; undefined when its data are no JSON any more. */
function hashOf({
  hash: _,
  latestAt: __,
  why,
  recordDigest,
  data,
  ...content
}: KeptEvent): string | undefined {
  try {
    return eventHash({
      ...content,
      data: JSON.parse(data),
      ...(why !== null && { why }),
      ...(recordDigest !== null && { recordDigest }),
    });
  } catch {
    return undefined;
  }
}

async function missingCheckpoint(
  { type, subjectId }: KeptEvent,
  { answer }: ProofSources,
): Promise<BreakReason | undefined> {
  if (type !== "checkpoint.created") return undefined;
  return (await answer(checkpoints.find(subjectId))) === undefined ? "checkpoint-missing" : undefined;
}

async function checkpointBreak(
  stated: readonly StatedCheckpoint[],
  { hash }: KeptEvent,
  { verify }: ProofSources,
): Promise<BreakReason | undefined> {
  for (const checkpoint of stated) {
    const found = await verify(checkpoint.statement);
    if (found.kind === "key-unknown") return "checkpoint-key-unknown";
    // A signature that anybody may have made vouches for nothing, and refutes nothing.
    if (found.kind === "key-compromised") continue;
    if (found.kind === "not-signed" || found.typ !== STATEMENT_TYPE) return "checkpoint-not-signed";
    if (canonicalText(found.payload) !== canonicalText(statementOf(checkpoint))) return "checkpoint-changed";
    if (checkpoint.hash !== hash) return "checkpoint-differs";
  }
  return undefined;
}

function statementOf({ sequence, hash, createdAt }: StatedCheckpoint): Statement {
  return { sequence, hash, at: createdAt };
}
