import { GroundMoved } from "../store/commit.ts";
import type { Change } from "../store/port.ts";
import { MOST_OF_A_BIT } from "./decide.ts";

/**
 * Holds to the number of photographs that a bit may have, whoever else adds one at the same moment. Throws GroundMoved. Call inside
 * the transaction, after the changes.
 */
export function photographsCounted(countOf: (bitId: string) => number): (changes: readonly Change[]) => void {
  return (changes) => {
    for (const change of changes) {
      if (change.type !== "photograph" || change.action !== "create") continue;
      const { bitId } = change.record;
      if (countOf(bitId) > MOST_OF_A_BIT) throw new GroundMoved("photograph", bitId);
    }
  };
}
