/** One attempt, as the `log` option is told of it. */
export type LogEntry = {
  readonly method: string;
  readonly url: string;
  /** As sent, with the key taken out. */
  readonly headers: Readonly<Record<string, string>>;
  /** 1 for the first. */
  readonly attempt: number;
  readonly durationMs: number;
  /** Absent where no answer arrived. */
  readonly status?: number;
  /** Absent where the attempt succeeded. */
  readonly error?: unknown;
  /** Absent where there is no further attempt. */
  readonly retryInMs?: number;
};

/** Headers with the key taken out. */
export function redacted(headers: Headers): Readonly<Record<string, string>> {
  const shown = new Headers(headers);
  if (shown.has("authorization")) shown.set("authorization", "[redacted]");
  return Object.fromEntries(shown.entries());
}
