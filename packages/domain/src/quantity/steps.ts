/** Work in short steps: others may have their turn after each. */
export type Steps<Result> = Generator<void, Result>;

/** What a function gives for each of many things, so many of them in one step. */
export function* mapInSteps<Thing, Result>(
  things: readonly Thing[],
  inOneStep: number,
  map: (thing: Thing) => Result,
): Steps<Result[]> {
  const results: Result[] = [];
  for (const [index, thing] of things.entries()) {
    if (index % inOneStep === inOneStep - 1) yield;
    results.push(map(thing));
  }
  return results;
}

/** All steps one after the other. */
export function allOf<Result>(steps: Steps<Result>): Result {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
