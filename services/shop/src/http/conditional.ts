import type { FastifyRequest } from "fastify";
import { Problem } from "../problems/problem.ts";
import type { App } from "./app-type.ts";
import { withoutEncoding } from "./compression.ts";

/** One entity-tag of RFC 9110, section 8.8.3. */
const ENTITY_TAG = /(W\/)?"([\x21\x23-\x7e\x80-\xff]*)"/g;
const ENTITY_TAG_LIST = /^\s*(?:(?:W\/)?"[\x21\x23-\x7e\x80-\xff]*"\s*(?:,\s*|$))+$/;

/** The strong ETag of a record's version. */
export function etagOf(version: number | string): string {
  return `"${version}"`;
}

/**
 * Refuses a change that does not say which version it changes (428), or names another than
 * the current one (412, with the current ETag). RFC 9110, section 13.1.1; strong comparison.
 */
export function requireMatch(request: FastifyRequest, version: number): void {
  const given = request.headers["if-match"];
  if (given === undefined) {
    throw new Problem("version-required", "Read the record first and send its ETag as If-Match.");
  }
  if (given.trim() === "*") return;
  const isCurrent = entityTags(given).some(({ isWeak, etag }) => !isWeak && etag === etagOf(version));
  if (!isCurrent) throw staleVersion(version);
}

/** The 412 for a record that has moved on to `version`. */
export function staleVersion(version: number): Problem {
  const etag = etagOf(version);
  return new Problem("version-stale", `The current version is ${etag}. Read it again before changing it.`, {
    headers: { ETag: etag },
  });
}

/** Answers 304 to a read whose ETag the caller already has. RFC 9110, section 13.1.2; weak comparison. */
export function answerConditionally(app: App): void {
  app.addHook("onSend", (request, reply, payload, done) => {
    const given = request.headers["if-none-match"];
    const isRead = request.method === "GET" || request.method === "HEAD";
    if (given === undefined || !isRead || reply.statusCode !== 200) return done(null, payload);
    const etag = reply.getHeader("etag");
    if (typeof etag !== "string" || !hasAlready(given, etag)) return done(null, payload);
    reply.code(304).removeHeader("content-length").removeHeader("content-type");
    done(null, null);
  });
}

function hasAlready(given: string, current: string): boolean {
  return given.trim() === "*" || entityTags(given).some(({ etag }) => etag === current);
}

function entityTags(list: string): { isWeak: boolean; etag: string }[] {
  if (!ENTITY_TAG_LIST.test(list)) return [];
  return [...list.matchAll(ENTITY_TAG)].map(([, weak, opaque]) => ({
    isWeak: weak !== undefined,
    etag: withoutEncoding(`"${opaque}"`),
  }));
}
