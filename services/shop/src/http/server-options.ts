import type { FastifyServerOptions } from "fastify";
import type { Config } from "../config.ts";
import { sendConnectionProblem, sendProblem } from "../problems/answer.ts";
import { requestIdOf, traceparentOf } from "./request-identity.ts";

const REQUEST_TIMEOUT_MS = 15_000;
const BODY_LIMIT_BYTES = 256 * 1024;

/** Where log lines go instead of standard output. */
export type LogStream = { write(line: string): void };

/** Time-outs, sizes and the log: everything Fastify is told before it is built. */
export function serverOptions(config: Config, logStream?: LogStream) {
  return {
    logger: {
      level: config.logLevel,
      serializers: { req: requestLine },
      redact: [
        "*.authorization",
        "*.headers.authorization",
        "req.headers.authorization",
        "*.secret",
        "*.key",
      ],
      ...(logStream && { stream: logStream }),
    },
    genReqId: requestIdOf,
    requestTimeout: REQUEST_TIMEOUT_MS,
    bodyLimit: BODY_LIMIT_BYTES,
    // Closing is answered by our own hook, as a problem.
    return503OnClosing: false,
    frameworkErrors: sendProblem,
    clientErrorHandler: sendConnectionProblem,
    trustProxy: config.trustedProxies.length > 0 ? [...config.trustedProxies] : false,
  } satisfies FastifyServerOptions;
}

function requestLine(request: {
  method: string;
  url: string;
  ip: string;
  headers: Record<string, string | string[] | undefined>;
}) {
  const { method, url, ip } = request;
  return { method, url, ip, traceparent: traceparentOf(request) };
}
