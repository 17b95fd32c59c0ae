import type { Kind } from "./kind.ts";
import type { CommitResult, Expectation } from "./port.ts";

/** Leaves a batch, so that nothing of it stays. */
export class RefusedError extends Error {
  readonly result: CommitResult;

  constructor(result: CommitResult) {
    super(result.kind);
    this.result = result;
  }
}

/** Throws a RefusedError unless a record is at the version that was expected of it. */
export function requireVersion(
  { noun }: Kind,
  id: string,
  expected: number,
  version: number | undefined,
): void {
  if (version === undefined) throw new RefusedError({ kind: "gone", noun, id });
  if (version !== expected) throw new RefusedError({ kind: "stale", noun, id, version });
}

/** Throws a RefusedError unless a record is as a decision rests on it: at a version, or not there. */
export function requireExpected({ kind, id, version }: Expectation, current: number | undefined): void {
  if (version !== undefined) requireVersion(kind, id, version, current);
  else if (current !== undefined)
    throw new RefusedError({ kind: "stale", noun: kind.noun, id, version: current });
}
