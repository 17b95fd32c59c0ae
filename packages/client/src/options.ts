import type { LogEntry } from "./log.ts";

/** Anything that answers a Request: the platform's own `fetch`, or a test's handler. */
export type Fetch = (request: Request) => Promise<Response>;

/** A bearer key, or what gives it: asked before each attempt, so that a rotated key is used at once. */
export type KeySource = string | (() => string | Promise<string>);

export type ClientOptions = {
  /** Where the service is, such as `http://127.0.0.1:8080`. */
  readonly baseUrl: string;
  /** The bearer key. Without one only the public operations answer. */
  readonly key?: KeySource | undefined;
  readonly fetch?: Fetch | undefined;
  /** For one attempt, its body included. Default: 30 s. */
  readonly timeoutMs?: number | undefined;
  /** For a whole call, its waits included. Default: 120 s. */
  readonly deadlineMs?: number | undefined;
  /** Attempts after the first. Default: 2. */
  readonly retries?: number | undefined;
  /** Sent with every call. */
  readonly headers?: Readonly<Record<string, string>> | undefined;
  /** Called with every attempt. The key never appears in it. What it throws is passed over. */
  readonly log?: ((entry: LogEntry) => void) | undefined;
};

/** Options that have been looked at and filled in. */
export type Settings = {
  readonly baseUrl: string;
  readonly key: KeySource | undefined;
  readonly fetch: Send;
  readonly timeoutMs: number;
  readonly deadlineMs: number;
  readonly retries: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly log: ((entry: LogEntry) => void) | undefined;
};

/** How requests are sent: the platform's fetch makes its own Request, and need not be given another. */
export type Send = (url: string, init: RequestInit) => Promise<Response>;

type Named = Readonly<Record<string, string>> | undefined;

const DEFAULTS = { timeoutMs: 30_000, deadlineMs: 120_000, retries: 2, headers: {} };

/** Fills in the defaults. Throws a TypeError for what could never work; the message never holds the key. */
export function settingsFrom(options: ClientOptions): Settings {
  const { key, fetch, log } = options;
  const send: Send = (url, init) => (fetch ? fetch(new Request(url, init)) : globalThis.fetch(url, init));
  if (typeof key === "string") requireKey(key);
  const baseUrl = readBaseUrl(options.baseUrl);
  return { ...withGiven(DEFAULTS, options), baseUrl, key, fetch: send, log: log && harmless(log) };
}

/** Options with those of them replaced that are given; headers are put beside the ones there are. */
export function withOptions(options: ClientOptions, given: Partial<ClientOptions>): ClientOptions {
  const headers = merged(options.headers, given.headers);
  return { ...withGiven(options, given), headers: Object.fromEntries(headers) };
}

/** These fields with the later ones in place of those of the same name, in whatever case. */
export function merged(fields: Named, later: Named): Headers {
  const headers = new Headers(fields);
  for (const [name, value] of Object.entries(later ?? {})) headers.set(name, value);
  return headers;
}

/** What is undefined leaves what is there. */
function withGiven<Fields extends object, Given extends object>(fields: Fields, given: Given) {
  const defined = Object.entries(given).filter(([, value]) => value !== undefined);
  return Object.assign({}, fields, Object.fromEntries(defined));
}

/** Throws for a key that a header cannot carry: the platform's own error would quote it. */
export function requireKey(key: string): string {
  if (!/^[\x21-\x7e]+$/.test(key)) {
    throw new TypeError("The key must be visible ASCII characters, without spaces.");
  }
  return key;
}

/** A log that breaks must not break the call that it reports, at once or later. */
function harmless(log: (entry: LogEntry) => unknown): (entry: LogEntry) => void {
  return (entry) => {
    try {
      Promise.resolve(log(entry)).catch(() => {});
    } catch {
      // There is nobody to tell: the log was the one.
    }
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
