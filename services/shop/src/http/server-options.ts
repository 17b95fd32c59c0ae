import type { FastifyHttpOptions, RawServerDefault } from "fastify";
import type { Config } from "../config.ts";
import { AccessLog } from "./access-log.ts";
import { sendConnectionProblem, sendProblem } from "./answer-problems.ts";
import { type LogStream, standardOutput } from "./log-lines.ts";
import { requestIdOf } from "./request-identity.ts";
import { requestLog } from "./request-log.ts";

const REQUEST_TIMEOUT_MS = 15_000;
const CHECK_CONNECTIONS_EVERY_MS = 1000;
const BODY_LIMIT_BYTES = 256 * 1024;

/** Time-outs, sizes and the log: the options that Fastify is built with. */
export function serverOptions(config: Config, logStream?: LogStream) {
  return {
    logger: {
      level: config.logLevel,
      redact: [
        "*.authorization",
        "*.headers.authorization",
        "req.headers.authorization",
        "*.secret",
        "*.key",
      ],
      stream: logStream ?? standardOutput(),
    },
    logController: new AccessLog(),
    childLoggerFactory: requestLog,
    genReqId: requestIdOf,
    requestTimeout: REQUEST_TIMEOUT_MS,
    // Node looks for requests that are too slow every half minute by itself: so long a head could drip in.
    http: { connectionsCheckingInterval: CHECK_CONNECTIONS_EVERY_MS },
    bodyLimit: BODY_LIMIT_BYTES,
    // Closing is answered by our own hook, as a problem.
    return503OnClosing: false,
    frameworkErrors: sendProblem,
    clientErrorHandler: sendConnectionProblem,
    trustProxy: config.trustedProxies.length > 0 ? [...config.trustedProxies] : false,
  } satisfies FastifyHttpOptions<RawServerDefault>;
}
