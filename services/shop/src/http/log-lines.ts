import pino from "pino";
import { lazily } from "./lazily.ts";

/** Takes the lines of the log instead of standard output. */
export type LogStream = { write(line: string): void };

/** Lines are written together, at the latest so much later; those at the end when the process exits. */
const TOGETHER_CHARACTERS = 16_000;
const LATEST_MS = 100;

/**
 * Writes the lines of the log to standard output, many at once and without waiting for it: one for all services of a process. They are
 * put together here: the destination would measure all that it holds again with every line, which took longer than to make the line.
 */
export const standardOutput = lazily((): LogStream => {
  const destination = pino.destination({ sync: false });
  let lines = "";
  const handOver = () => {
    if (lines !== "") destination.write(lines);
    lines = "";
  };
  setInterval(handOver, LATEST_MS).unref();
  process.once("exit", () => {
    handOver();
    destination.flushSync();
  });
  return {
    write: (line) => {
      lines += line;
      if (lines.length >= TOGETHER_CHARACTERS) handOver();
    },
  };
});
