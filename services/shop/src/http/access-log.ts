import { type FastifyBaseLogger, type FastifyReply, type FastifyRequest, LogController } from "fastify";
import { traceparentOf } from "./request-identity.ts";

/** Logs each request once, when it has been answered: who asked for what, the answer's status and the time it took. */
export class AccessLog extends LogController {
  /** These lines hold no headers and no bodies, so nothing must be redacted, which costs more than writing them. */
  #log: FastifyBaseLogger | undefined;

  override incomingRequest(): void {}

  override requestCompleted(
    error: Error | null | undefined,
    request: FastifyRequest,
    reply: FastifyReply,
  ): void {
    this.#log ??= request.server.log.child({}, { redact: [] });
    const { id, method, url, ip } = request;
    const line = {
      reqId: id,
      method,
      url,
      ip,
      traceparent: traceparentOf(request),
      status: reply.statusCode,
      responseTimeMs: Math.round(reply.elapsedTime * 1000) / 1000,
    };
    if (error) this.#log.error({ ...line, err: error }, "request broken off");
    else this.#log.info(line, "request answered");
  }
}
