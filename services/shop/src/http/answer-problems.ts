import { STATUS_CODES } from "node:http";
import type { Socket } from "node:net";
import type { ConnectionError, FastifyReply, FastifyRequest } from "fastify";
import type { ProblemCode } from "../problems/codes.ts";
import { problemFrom } from "../problems/from-error.ts";
import { Problem, pathOf, problemBody } from "../problems/problem.ts";
import { ProblemSchema } from "../problems/schema.ts";
import type { App } from "./app-type.ts";
import { RefusedRowSchema } from "./many-schema.ts";

export const PROBLEM_JSON = "application/problem+json";

const BY_CONNECTION_CODE: Readonly<Record<string, ProblemCode>> = {
  ERR_HTTP_REQUEST_TIMEOUT: "request-too-slow",
  HPE_HEADER_OVERFLOW: "headers-too-large",
};

/** Answers every error of every route with one kind of body. */
export function answerProblems(app: App): void {
  for (const schema of [ProblemSchema, RefusedRowSchema]) app.addSchema(schema);
  app.setErrorHandler(sendProblem);
}

/** Sends an error as problem+json. A cause that is ours is logged whole and shown to nobody. */
export function sendProblem(error: unknown, request: FastifyRequest, reply: FastifyReply): void {
  const problem = problemFrom(error);
  if (problem.status >= 500) request.log.error({ err: error }, problem.code);
  const body = problemBody(problem, request.id, pathOf(request));
  // A path that cannot be read never reaches the hook that sets the id.
  reply.headers({ ...problem.headers, "X-Request-Id": request.id });
  reply.code(problem.status).type(PROBLEM_JSON).send(JSON.stringify(body));
}

/** Answers what never became a request: malformed HTTP, headers too large or too slow. */
export function sendConnectionProblem(error: ConnectionError, socket: Socket): void {
  if (error.code === "ECONNRESET" || socket.destroyed || !socket.writable) return;
  const problem = new Problem(
    BY_CONNECTION_CODE[error.code] ?? "malformed-request",
    "This is not an HTTP request that can be read.",
  );
  const body = JSON.stringify(problemBody(problem, "none", "/"));
  socket.end(
    `HTTP/1.1 ${problem.status} ${STATUS_CODES[problem.status]}\r\n` +
      `Content-Type: ${PROBLEM_JSON}\r\nContent-Length: ${Buffer.byteLength(body)}\r\nConnection: close\r\n\r\n${body}`,
  );
}
