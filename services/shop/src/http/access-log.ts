import { type FastifyBaseLogger, type FastifyReply, type FastifyRequest, LogController } from "fastify";
import { traceparentOf } from "./request-identity.ts";

/** Who asked for what, the answer's status and the time it took. */
export type Answered = {
  readonly reqId: string;
  readonly method: string;
  readonly url: string;
  readonly ip: string;
  readonly traceparent: string | undefined;
  readonly status: number;
  readonly responseTimeMs: number;
};

/** The log of answered requests: its lines hold no headers and no bodies, so nothing must be redacted, which costs more than writing them. */
export function answeredLog(log: FastifyBaseLogger): FastifyBaseLogger {
  return log.child({}, { redact: [] });
}

/** Logs a request that has been answered. */
export function logAnswered(log: FastifyBaseLogger, answered: Answered, error?: Error | null): void {
  if (error) log.error({ ...answered, err: error }, "request broken off");
  else log.info(answered, "request answered");
}

/** A time as it is logged: microseconds are enough. */
export function loggedMs(elapsedMs: number): number {
  return Math.round(elapsedMs * 1000) / 1000;
}

/** Logs each request once, when it has been answered. */
export class AccessLog extends LogController {
  #log: FastifyBaseLogger | undefined;

  override incomingRequest(): void {}

  override requestCompleted(
    error: Error | null | undefined,
    request: FastifyRequest,
    reply: FastifyReply,
  ): void {
    this.#log ??= answeredLog(request.server.log);
    const { id: reqId, method, url, ip } = request;
    const traceparent = traceparentOf(request);
    const { statusCode: status } = reply;
    const responseTimeMs = loggedMs(reply.elapsedTime);
    logAnswered(this.#log, { reqId, method, url, ip, traceparent, status, responseTimeMs }, error);
  }
}
