import type { App } from "./app-type.ts";

/** Answers are data for one caller: no cache may share them, no page may frame or sniff them. */
const FIXED_HEADERS = {
  "Cache-Control": "private, no-cache",
  "Content-Security-Policy": "default-src 'none'; frame-ancestors 'none'",
  "Referrer-Policy": "no-referrer",
  "X-Content-Type-Options": "nosniff",
};

/** Sets the headers that are the same on every answer. */
export function addFixedHeaders(app: App): void {
  app.addHook("onRequest", (_request, reply, done) => {
    reply.headers(FIXED_HEADERS);
    done();
  });
}
