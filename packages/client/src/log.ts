/** One attempt, as the `log` option gets it. */
export type LogEntry = {
  readonly method: string;
  readonly url: string;
  /** As sent, with the key taken out. */
  readonly headers: Readonly<Record<string, string>>;
  /** What the service's log knows the attempt by. */
  readonly requestId: string | undefined;
  /** 1 for the first. */
  readonly attempt: number;
  readonly durationMs: number;
  /** Of whatever answered, also if that was no success. Absent if no answer arrived. */
  readonly status?: number;
  /** Absent if the attempt succeeded. */
  readonly error?: unknown;
  /** Absent if there is no further attempt. */
  readonly retryInMs?: number;
  /** That the operation is going away: since and until when, and a link to what to use instead. */
  readonly warning?: string;
};

export const REDACTED = "[redacted]";

const SECRET = /authorization|cookie|token|secret|password|(?<!idempotency-)key/;

/** Headers with keys and cookies taken out, whatever their names. */
export function redacted(headers: Headers): Readonly<Record<string, string>> {
  const shown = new Headers(headers);
  for (const name of [...shown.keys()]) if (SECRET.test(name)) shown.set(name, REDACTED);
  return Object.fromEntries(shown.entries());
}

/** What an answer says of the end of its operation, by the headers Deprecation (RFC 9745), Sunset (RFC 8594) and Link. */
export function warningIn(headers: Headers): string | undefined {
  const [, seconds] = /^@(\d+)/.exec(headers.get("deprecation") ?? "") ?? [];
  if (seconds === undefined) return undefined;
  const [, instead] = /<([^>]*)>; *rel="?deprecation/.exec(headers.get("link") ?? "") ?? [];
  const parts = [
    `Deprecated from ${new Date(Number(seconds) * 1000).toUTCString()}`,
    headers.has("sunset") && `may be gone after ${headers.get("sunset")}`,
    instead && `see ${instead}`,
  ];
  return parts.filter(Boolean).join("; ");
}
