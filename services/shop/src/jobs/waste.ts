import type { CutSettings } from "@rimwise/domain";
import { namingWasteBit } from "../plans/waste-bit.ts";
import type { Question } from "../store/query.ts";
import type { FindBit } from "./candidates.ts";
import type { Attempt } from "./planned.ts";

/** What takes the wood out before an undercut bit goes in, in the same machine; undefined if nothing must, or no bit of the rack serves. */
export function* wasteAttempt(
  { outcome, machine }: Attempt,
  find: FindBit,
): Question<Pick<Attempt, "candidate" | "machine"> | undefined> {
  if (outcome.kind === "refused") return undefined;
  const named = yield* namingWasteBit(outcome.plan, outcome.input);
  const waste = named.findings.flatMap((finding) => (finding.code === "waste-first" ? [finding] : []))[0];
  if (waste?.bit === undefined) return undefined;
  const bit = yield* find(waste.bit.id);
  if (bit === undefined) return undefined;
  // As deep as the wood is wasted; the bit's own width, or the groove's where the bit is narrower.
  const isNarrower = waste.bit.diameterMm < waste.widthMm;
  const settings: CutSettings = {
    kind: "groove",
    depthMm: waste.depthMm,
    ...(isNarrower && { widthMm: waste.widthMm }),
  };
  return { candidate: { bit, settings }, machine };
}
