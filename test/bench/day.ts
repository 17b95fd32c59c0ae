import { DEFAULT_POLICY, orderDaySteps } from "@rimwise/domain";
import { randomFrom } from "../fuzz/random.ts";
import { shopDay } from "../properties/day-jobs.ts";

const DAYS = 60;

/** The order of a day of 12 and of 40 set-ups: milliseconds for all of it and for the longest piece, and how far it is from its bound. */
export async function benchDay(): Promise<string> {
  const rows = [12, 40].map((count) => {
    const days = Array.from({ length: DAYS }, (_, seed) => ordered(seed, count));
    const middle = (values: number[]) => values.sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
    const whole = middle(days.map(({ wholeMs }) => wholeMs));
    const longest = Math.max(...days.map(({ wholeMs }) => wholeMs));
    const piece = middle(days.map(({ pieceMs }) => pieceMs));
    const gap = Math.max(...days.map(({ gapPercent }) => gapPercent));
    return `  ${count} set-ups   median ${whole.toFixed(1)} ms, longest ${longest.toFixed(1)} ms; longest piece ${piece.toFixed(1)} ms (median of days); at most ${gap.toFixed(1)} % over the bound`;
  });
  return [`The order of a day, of ${DAYS} days`, ...rows].join("\n");
}

function ordered(seed: number, count: number) {
  const steps = orderDaySteps(shopDay(randomFrom(seed), count), DEFAULT_POLICY);
  let wholeMs = 0;
  let pieceMs = 0;
  for (;;) {
    const started = performance.now();
    const step = steps.next();
    const tookMs = performance.now() - started;
    wholeMs += tookMs;
    pieceMs = Math.max(pieceMs, tookMs);
    if (step.done !== true) continue;
    const { changeoverMin, lowerBoundMin } = step.value;
    return { wholeMs, pieceMs, gapPercent: 100 * (changeoverMin / lowerBoundMin - 1) };
  }
}
