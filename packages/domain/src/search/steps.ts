/** Work in short steps: others may have their turn after each. */
export type Steps<Result> = Generator<undefined, Result, undefined>;

/** All steps one after the other. */
export function allOf<Result>(steps: Steps<Result>): Result {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
