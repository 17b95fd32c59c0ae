import { strictestPolicy } from "@rimwise/domain";
import { runOutUntil } from "../plans/learned.ts";
import type { RouterReads } from "../routers/reads.ts";
import type { Ground } from "./outcome.ts";

/** Until when everything measured that a setting rests on still counts; undefined where nothing measured runs out. */
export async function measuredUntil(
  { bit, router, layers }: Ground,
  routers: Pick<RouterReads, "readingsUntil">,
  at: string,
): Promise<string | undefined> {
  if (router === undefined) return undefined;
  const { record } = router;
  const policy = strictestPolicy(...layers);
  const ends = [await routers.readingsUntil(record, at), bit && runOutUntil(record.id, bit.learned, policy)];
  return ends.filter((each) => each !== undefined).sort()[0];
}
