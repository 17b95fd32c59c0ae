import fc from "fast-check";
import { hold } from "./invariants.ts";
import { anyStep, happen, type Step, type Tally } from "./step.ts";
import { openWorld } from "./world.ts";

/** What a seed came to. */
export type Simulated = { readonly failure: string | undefined; readonly tally: ReadonlyMap<string, number> };

/** Of a seed that fails, the fewest steps are searched for so long. */
const LONGEST_SEARCH_MS = 120_000;

/** Lets the steps of a seed happen, and of a seed that fails fewer and fewer, until none can be left out. */
export async function simulate(seed: number, mostSteps: number, mayShrink: boolean): Promise<Simulated> {
  const steps = fc.array(anyStep, { minLength: 1, maxLength: mostSteps, size: "max" });
  const tally = new Map<string, number>();
  const count = (what: string) => void tally.set(what, (tally.get(what) ?? 0) + 1);
  const property = fc.asyncProperty(steps, (each) => live(each, count));
  const details = await fc.check(property, {
    ...{ seed, numRuns: 1, endOnFailure: !mayShrink },
    ...{ interruptAfterTimeLimit: LONGEST_SEARCH_MS, markInterruptAsFailure: false },
  });
  return { failure: details.failed ? String(details.errorInstance) : undefined, tally };
}

async function live(steps: readonly Step[], tally: Tally): Promise<void> {
  const world = await openWorld();
  const happened: Step[] = [];
  try {
    let model = world.model;
    for (const step of steps) {
      happened.push(step);
      model = await happen(world, model, step, happened.length, tally);
      await hold(world, model);
    }
  } catch (error) {
    throw new Error(`${String(error)}\n${happened.map((step) => fc.stringify(step)).join("\n")}`);
  } finally {
    await world.end();
  }
}
