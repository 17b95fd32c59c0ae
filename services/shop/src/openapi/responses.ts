/** A header as the description shows it, or where it is shown. */
export type Header = {
  readonly $ref?: string;
  readonly description?: string;
  readonly schema?: { readonly type: "string" };
};

export function header(description: string): Header {
  return { description, schema: { type: "string" } };
}

export const REPLAYED = header("`true` if this is the kept answer to the same request before.");

/** What every answer has, also a refusal. The limits are absent from answers that are not counted. */
export const EVERY_ANSWER: Readonly<Record<string, Header>> = {
  "X-Request-Id": header("The id of this request in the service's log."),
  RateLimit: header("How many requests are left, and for how many seconds."),
  "RateLimit-Policy": header("How many requests may be made in how many seconds."),
};

export type MediaType = { schema?: unknown; example?: unknown };

/** An answer as the description shows it, or where it is shown. */
export type ResponseObject = {
  $ref?: string;
  description?: string;
  headers?: Readonly<Record<string, Header>>;
  content?: Record<string, MediaType>;
};
