import { runOutUntil } from "../learned/learned.ts";
import { policyInForce } from "../policy/in-force.ts";
import type { Question } from "../store/query.ts";
import { readingsUntil } from "../usable-routers/reads.ts";
import type { Grounds } from "./result.ts";

/** Until when everything measured that an approval rests on still counts; undefined when nothing measured runs out. */
export function* measuredUntil({ bit, router, layers }: Grounds, at: string): Question<string | undefined> {
  if (router === undefined) return undefined;
  const { record } = router;
  const policy = policyInForce(...layers);
  const ends = [yield* readingsUntil(record, at, policy), bit && runOutUntil(record.id, bit.learned, policy)];
  return ends.filter((each) => each !== undefined).sort()[0];
}
