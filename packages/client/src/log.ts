/** One attempt, as the `log` option gets it. */
export type LogEntry = {
  readonly method: string;
  readonly url: string;
  /** As sent, with the key taken out. */
  readonly headers: Readonly<Record<string, string>>;
  /** 1 for the first. */
  readonly attempt: number;
  readonly durationMs: number;
  /** Absent if no answer arrived. */
  readonly status?: number;
  /** Absent if the attempt succeeded. */
  readonly error?: unknown;
  /** Absent if there is no further attempt. */
  readonly retryInMs?: number;
};

/** Headers with the key taken out. */
export function redacted(headers: Headers): Readonly<Record<string, string>> {
  const shown = new Headers(headers);
  if (shown.has("authorization")) shown.set("authorization", "[redacted]");
  return Object.fromEntries(shown.entries());
}
