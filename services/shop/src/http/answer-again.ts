import type { IncomingHttpHeaders, IncomingMessage, ServerResponse } from "node:http";
import proxyAddr from "@fastify/proxy-addr";
import type { FastifyReply, FastifyRequest } from "fastify";
import type { Caller, RecallCaller } from "../access/caller.ts";
import type { Mark, Store } from "../store/store.ts";
import { answeredLog, logAnswered, loggedMs } from "./access-log.ts";
import type { App } from "./app-type.ts";
import type { CountKey } from "./rate-limit.ts";
import { remembered } from "./remembered.ts";
import { requestIdOf, traceparentOf } from "./request-identity.ts";

/** Takes note that a request is answered with a text that holds at its mark, and that was sent before. */
export type NoteRepeat = (request: FastifyRequest, text: string) => void;

/** What takes how long such requests took to answer. */
export type ObserverOf = (method: string, route: string, status: number) => (elapsedMs: number) => void;

type Parts = {
  readonly mark: Store["mark"];
  readonly recallCaller: RecallCaller;
  readonly countKey: CountKey;
  readonly observerOf: ObserverOf;
  readonly isClosing: () => boolean;
  readonly trustedProxies: readonly string[];
};

/** An answer as it left the service. */
type Kept = {
  readonly callerNow: () => Caller | null;
  readonly observe: (elapsedMs: number) => void;
  /** Names and values by turns, but for those of one request. An object of a dozen would take as long to copy as all the rest. */
  readonly headers: readonly string[];
  readonly text: string;
};

const OF_ONE_REQUEST = ["x-request-id", "traceparent", "ratelimit", "ratelimit-policy"];

/** A request with one of these may get another answer than the same request without it. */
const ANSWERED_OTHERWISE = ["if-none-match", "origin", "content-length", "transfer-encoding"];

/**
 * Sends what a key was sent before to the same key when it asks the same again, ahead of the framework: as long as nothing was
 * committed its answer is the same, and to find that out took three times as long as to send it. Whoever calls is still asked for a
 * valid key and counted, and the answer measured and logged. Only if the store knows its mark at once.
 */
export function answerAgain(app: App, parts: Parts): NoteRepeat {
  const { mark, recallCaller, countKey, observerOf, isClosing } = parts;
  const kept = remembered<Kept>();
  const repeats = new WeakMap<FastifyRequest, string>();
  const log = answeredLog(app.log);
  const ipOf = addressFinder(parts.trustedProxies);

  app.addHook("onResponse", (request, reply, done) => {
    const text = repeats.get(request);
    const { authorization } = request.headers;
    if (text !== undefined && authorization !== undefined && mayBeSentAgain(request, reply))
      keep(request, reply, text, authorization);
    done();
  });

  function keep(request: FastifyRequest, reply: FastifyReply, text: string, authorization: string): void {
    const { mark: at, raw } = request;
    const asked = askedBy(authorization, raw);
    if (at === undefined || kept.recall(at, asked) !== undefined) return;
    const callerNow = recallCaller(at, authorization);
    if (callerNow === undefined) return;
    const headers = Object.entries(reply.getHeaders())
      .filter(([name]) => !OF_ONE_REQUEST.includes(name))
      .flatMap(([name, value]) => [name, String(value)]);
    const observe = observerOf("GET", request.routeOptions.url ?? "none", 200);
    kept.keep(at, asked, { callerNow, observe, headers, text });
  }

  /** Sends what was sent before at this mark, if the caller may still have it. Returns whether it did. */
  function send(asked: string, at: Mark, request: IncomingMessage, response: ServerResponse): boolean {
    const startedMs = performance.now();
    const answer = kept.recall(at, asked);
    const caller = answer?.callerNow();
    if (answer === undefined || !caller || isClosing() || app.isUnderPressure()) return false;
    const counted = countKey(caller.keyId);
    if (counted.isTooMany) return false;
    const reqId = requestIdOf(request);
    const traceparent = traceparentOf(request);
    const sent = answer.headers.slice();
    sent.push("x-request-id", reqId, "ratelimit-policy", counted.policy, "ratelimit", counted.limit);
    if (traceparent !== undefined) sent.push("traceparent", traceparent);
    response.writeHead(200, sent).end(answer.text);
    const elapsedMs = performance.now() - startedMs;
    answer.observe(elapsedMs);
    const { method = "", url = "" } = request;
    const ip = ipOf(request);
    const responseTimeMs = loggedMs(elapsedMs);
    logAnswered(log, { reqId, method, url, ip, traceparent, status: 200, responseTimeMs });
    return true;
  }

  app.addHook("onReady", async () => {
    const { server } = app;
    const framework = server.listeners("request");
    const passOn = (...asked: [IncomingMessage, ServerResponse]) => {
      for (const listener of framework) Reflect.apply(listener, server, asked);
    };
    server.removeAllListeners("request");
    server.on("request", (request, response) => {
      const asked = mayBeKnown(request);
      if (asked === undefined || !kept.has(asked)) return passOn(request, response);
      const at = mark();
      // What must be waited for has the limits of time that the framework's hooks set.
      const isSent = typeof at !== "object" && send(asked, at, request, response);
      if (!isSent) passOn(request, response);
    });
  });
  return (request, text) => void repeats.set(request, text);
}

/** What a request asks, if it is one that may be answered as before. */
function mayBeKnown(request: IncomingMessage): string | undefined {
  const { method, headers } = request;
  const { authorization } = headers;
  if (method !== "GET" || authorization === undefined || isAskedOtherwise(headers)) return undefined;
  return askedBy(authorization, request);
}

function isAskedOtherwise(headers: IncomingHttpHeaders): boolean {
  return ANSWERED_OTHERWISE.some((name) => headers[name] !== undefined);
}

function mayBeSentAgain(request: FastifyRequest, reply: FastifyReply): boolean {
  if (request.method !== "GET" || reply.statusCode !== 200) return false;
  return !isAskedOtherwise(request.headers) && !reply.hasHeader("content-encoding");
}

/** What is asked, by whom, and what they accept: encoded or not, other headers go with an answer. */
function askedBy(authorization: string, { headers, url }: IncomingMessage): string {
  return `${url} ${headers["accept-encoding"] ?? ""} ${authorization}`;
}

/** Where a request comes from, as the framework finds it out. */
function addressFinder(trustedProxies: readonly string[]): (request: IncomingMessage) => string {
  if (trustedProxies.length === 0) return ({ socket }) => socket.remoteAddress ?? "";
  const isTrusted = proxyAddr.compile([...trustedProxies]);
  return (request) => proxyAddr(request, isTrusted);
}
