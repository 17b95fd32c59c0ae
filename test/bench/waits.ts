/** Rounds of which the median counts. */
export const ROUNDS = 9;

/** How long something takes, and how long others wait for the event loop meanwhile, at most: one line. It is done once before the clock. */
export async function waits(name: string, ask: () => Promise<unknown>): Promise<string> {
  const wholeMs: number[] = [];
  let stallMs = 0;
  let last = performance.now();
  let isWatched = true;
  const watch = () => {
    const now = performance.now();
    stallMs = Math.max(stallMs, now - last);
    last = now;
    if (isWatched) setImmediate(watch);
  };
  await ask();
  last = performance.now();
  watch();
  for (let round = 0; round < ROUNDS; round += 1) {
    const started = performance.now();
    await ask();
    wholeMs.push(performance.now() - started);
  }
  isWatched = false;
  const middle = wholeMs.sort((one, other) => one - other)[Math.floor(ROUNDS / 2)] ?? 0;
  return `  ${name.padEnd(34)} median ${middle.toFixed(0)} ms; others wait ${stallMs.toFixed(0)} ms at most`;
}
