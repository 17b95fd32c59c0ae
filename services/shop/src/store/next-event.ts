import { eventHash, laterOf } from "./chain.ts";
import { subjectOf } from "./changes.ts";
import type { ChainHead } from "./head.ts";
import type { Change, Stamp } from "./port.ts";

/** The end of the chain. */
export type Head = ChainHead & { readonly latestAt: string };

/** The event of a change as it is appended to the chain after its head. */
export function nextEvent(
  change: Change,
  { at, by, requestId, why }: Stamp,
  head: Head,
  recordDigest: string | undefined,
) {
  const { type, data } = change.event;
  const content = {
    sequence: head.sequence + 1,
    at,
    by,
    requestId,
    type,
    subjectId: subjectOf(change),
    subjectVersion: versionAfter(change),
    data,
    previousHash: head.hash,
    ...(why !== undefined && { why }),
    ...(recordDigest !== undefined && { recordDigest }),
  };
  return { ...content, hash: eventHash(content), latestAt: laterOf(at, head.latestAt) };
}

function versionAfter(change: Change): number {
  switch (change.action) {
    case "create":
    case "replace":
      return change.record.version;
    case "amend":
      return change.fields.version;
    case "remove":
      return change.expectedVersion;
  }
}
