import type { LogEntry } from "./log.ts";

/** Anything that answers a Request: the platform's own `fetch`, or a test's handler. */
export type Fetch = (request: Request) => Promise<Response>;

export type ClientOptions = {
  /** Where the service is, such as `http://127.0.0.1:8080`. */
  readonly baseUrl: string;
  /** The bearer key. Without one only the public operations answer. */
  readonly key?: string;
  readonly fetch?: Fetch;
  /** For one attempt, its body included. 30 s unless given. */
  readonly timeoutMs?: number;
  /** For a whole call, its waits included. 120 s unless given. */
  readonly deadlineMs?: number;
  /** Attempts after the first. 2 unless given. */
  readonly retries?: number;
  /** Called with every attempt. The key never appears in it. */
  readonly log?: (entry: LogEntry) => void;
};

/** Options that have been looked at and filled in. */
export type Settings = {
  readonly baseUrl: string;
  readonly key: string | undefined;
  readonly fetch: Fetch;
  readonly timeoutMs: number;
  readonly deadlineMs: number;
  readonly retries: number;
  readonly log: (entry: LogEntry) => void;
};

const DEFAULTS = { timeoutMs: 30_000, deadlineMs: 120_000, retries: 2 };

/** Fills in the defaults. Throws a TypeError for what could never work; the message never holds the key. */
export function settingsFrom(options: ClientOptions): Settings {
  const { key, fetch = (request) => globalThis.fetch(request), log = () => {} } = options;
  // A header cannot carry anything else, and the platform's own error would quote the key.
  if (key !== undefined && !/^[\x21-\x7e]+$/.test(key)) {
    throw new TypeError("The key must be visible ASCII characters, without spaces or line ends.");
  }
  const baseUrl = readBaseUrl(options.baseUrl);
  return { ...DEFAULTS, ...given(options), baseUrl, key, fetch, log: harmless(log) };
}

/** A log that breaks must not break the call that it reports. */
function harmless(log: Settings["log"]): Settings["log"] {
  return (entry) => {
    try {
      log(entry);
    } catch {
      // There is nobody to tell: the log was the one.
    }
  };
}

function given({ timeoutMs, deadlineMs, retries }: ClientOptions) {
  return {
    ...(timeoutMs !== undefined && { timeoutMs }),
    ...(deadlineMs !== undefined && { deadlineMs }),
    ...(retries !== undefined && { retries }),
  };
}

function readBaseUrl(text: string): string {
  const url = URL.canParse(text) ? new URL(text) : undefined;
  const isUsable =
    url !== undefined &&
    /^https?:$/.test(url.protocol) &&
    url.username + url.password + url.search + url.hash === "";
  if (!isUsable) {
    throw new TypeError("baseUrl must be an absolute http or https URL without a user, query or fragment.");
  }
  return url.href.replace(/\/+$/, "");
}
