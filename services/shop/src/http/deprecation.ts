import type { App } from "./app-type.ts";

/** What is going away, and when. */
export type Deprecated = {
  /** Since when callers should use something else, such as 2027-01-31. */
  readonly since: string;
  /** From when on it may be gone. */
  readonly goneAfter?: string;
  /** The path of the description of what to use instead. */
  readonly instead: string;
};

declare module "fastify" {
  interface FastifyContextConfig {
    deprecated?: Deprecated;
  }
}

const SECOND_MS = 1000;

/**
 * Tells every caller of a deprecated operation so: the headers Deprecation (RFC 9745), Sunset (RFC 8594) and a link to what to use
 * instead. Register before any route.
 */
export function announceDeprecations(app: App): void {
  app.addHook("onRoute", (route) => {
    const { deprecated } = route.config ?? {};
    if (deprecated === undefined) return;
    const { since, goneAfter, instead } = deprecated;
    const headers = {
      Deprecation: `@${Date.parse(since) / SECOND_MS}`,
      ...(goneAfter !== undefined && { Sunset: new Date(goneAfter).toUTCString() }),
      Link: `<${instead}>; rel="deprecation"`,
    };
    route.schema = { ...route.schema, deprecated: true };
    const before = [route.onRequest ?? []].flat();
    route.onRequest = [
      ...before,
      (_request, reply, done) => {
        reply.headers(headers);
        done();
      },
    ];
  });
}
