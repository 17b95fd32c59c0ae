import type { CommitResult } from "./port.ts";

/** Leaves a batch, so that nothing of it stays. */
export class RefusedError extends Error {
  readonly result: CommitResult;

  constructor(result: CommitResult) {
    super(result.kind);
    this.result = result;
  }
}
