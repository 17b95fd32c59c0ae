import { type ToothMaterial, wearFactor, woodById } from "@rimwise/domain";
import type { UseRecord } from "./schema.ts";

type Worn = Pick<UseRecord, "woodId" | "metres" | "doneAt">;

/** What one use took of an edge, as metres of solid wood of middling density. A wood nobody knows any more counts as that. */
export function equivalentMetres(
  { woodId, metres }: Pick<Worn, "woodId" | "metres">,
  toothMaterial: ToothMaterial = "unknown",
): number {
  const wood = woodById(woodId);
  return wood === undefined ? metres : metres * wearFactor(wood, toothMaterial);
}

/** The uses after a moment: what an inspection or a sharpening at that moment has not seen. */
export function usesAfter<Use extends Worn>(uses: readonly Use[], moment: string): Use[] {
  return uses.filter(({ doneAt }) => doneAt > moment);
}
