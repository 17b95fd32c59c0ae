import { Problem } from "../problems/problem.ts";
import type { ImportRecord } from "./schema.ts";

/**
 * Refuses a file that would make bits a second time. One whose rows all have an `id` may come as often as it likes: it
 * makes its bits what it says. `imports` are those of the same bytes.
 */
export function requireNew(imports: readonly ImportRecord[]): void {
  const before = imports.find(({ newIds, state }) => newIds > 0 || state === "running");
  if (before === undefined) return;
  const { id, createdAt, state, newIds } = before;
  const outcome = state === "done" ? `made new bits: ${newIds}` : "was cut off after some of its rows";
  throw new Problem(
    "imported-before",
    `This file was imported at ${createdAt} (${id}) and ${outcome}. To make its bits once more, send it with isRepeat=true.`,
  );
}
