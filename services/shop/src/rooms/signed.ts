import { approvals } from "../approvals/reads.ts";
import { checkpoints } from "../checkpoints/reads.ts";
import type { Signed } from "../signing/require-keys.ts";
import type { Question } from "../store/query.ts";

/** What the shop has signed so far: its file of signing keys must hold the keys to it. */
export function* signedSoFar(): Question<Signed> {
  return {
    signingKeyIds: yield* checkpoints.signingKeyIds(),
    mayHaveSheets: yield* approvals.wasAnyIssued(),
  };
}
