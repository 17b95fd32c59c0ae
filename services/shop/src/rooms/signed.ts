import { approvals } from "../approvals/reads.ts";
import { checkpoints } from "../checkpoints/reads.ts";
import type { SignedSoFar } from "../signing/start.ts";
import type { Question } from "../store/query.ts";

/** What the shop has signed so far: it must have the keys to it. */
export function* signedSoFar(): Question<SignedSoFar> {
  return {
    signingKeyIds: yield* checkpoints.signingKeyIds(),
    mayHaveSheets: yield* approvals.wasAnyIssued(),
  };
}
