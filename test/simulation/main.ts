import { parseArgs } from "node:util";
import { simulate } from "./simulate.ts";

/**
 * Simulates the seeds from one on, and prints those that fail with the fewest steps that do: `pnpm simulate --seed 7`. What is
 * random, and every time, follows from the seed.
 */
const { values } = parseArgs({
  options: {
    seed: { type: "string", default: "1" },
    count: { type: "string", default: "1" },
    /** Whether the steps of a seed that fails are printed as they are, without a search for the fewest. */
    whole: { type: "boolean", default: false },
    steps: { type: "string", default: "120" },
  },
});

let failed = 0;
const tally = new Map<string, number>();
const first = Number(values.seed);
for (let seed = first; seed < first + Number(values.count); seed += 1) {
  const { failure, tally: own } = await simulate(seed, Number(values.steps), !values.whole);
  for (const [what, times] of own) tally.set(what, (tally.get(what) ?? 0) + times);
  if (failure === undefined) continue;
  failed += 1;
  process.stdout.write(`Seed ${seed} fails. ${failure}\n`);
}
for (const [what, times] of [...tally].sort()) process.stdout.write(`${times} × ${what}\n`);
process.stdout.write(`${values.count} seeds simulated, ${failed} failed\n`);
process.exitCode = failed === 0 ? 0 : 1;
