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

const SECRET = /authorization|cookie|token|secret|password|(?<!idempotency-)key/;

/** Headers with keys and cookies taken out, whatever their names. */
export function redacted(headers: Headers): Readonly<Record<string, string>> {
  const shown = new Headers(headers);
  for (const name of [...shown.keys()]) if (SECRET.test(name)) shown.set(name, "[redacted]");
  return Object.fromEntries(shown.entries());
}
