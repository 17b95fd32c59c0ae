import type { Bell } from "./bell.ts";

/** So long nobody looks again after a look: commits come by the hundred a second, and what is looked for is seldom there. */
const REST_MS = 100;

/**
 * Looks as soon as the bell rings; what rings meanwhile, and for a moment after it, is for one more look. `look` never throws. Call what
 * it returns to end this: it waits for the look under way, makes no other, and says whether the bell has rung since.
 */
export function lookAtRings(
  { listen }: Pick<Bell, "listen">,
  look: () => Promise<void>,
): () => Promise<boolean> {
  let looking: Promise<void> | undefined;
  let hasRung = false;
  let isEnding = false;
  let endRest = () => {};

  function rest(): Promise<void> {
    return new Promise((resolve) => {
      const timer = setTimeout(resolve, REST_MS).unref();
      endRest = () => {
        clearTimeout(timer);
        resolve();
      };
    });
  }

  async function lookWhileItRings(): Promise<void> {
    while (hasRung && !isEnding) {
      hasRung = false;
      await look();
      if (!isEnding) await rest();
    }
    looking = undefined;
  }

  const deafen = listen(() => {
    hasRung = true;
    looking ??= lookWhileItRings();
  });
  return async () => {
    isEnding = true;
    deafen();
    endRest();
    await looking;
    return hasRung;
  };
}
