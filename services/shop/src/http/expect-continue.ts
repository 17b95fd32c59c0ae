import type { IncomingMessage } from "node:http";
import type { FastifyRequest } from "fastify";
import { Problem, pathOf, problemBody } from "../problems/problem.ts";
import { PROBLEM_JSON } from "./answer-problems.ts";
import type { App } from "./app-type.ts";
import { requestIdOf } from "./request-identity.ts";

/**
 * Refuses a body by its length and its type before its bytes are read; a caller who asked first (`Expect: 100-continue`, RFC 9110,
 * section 10.1.1) is told to go on only then, and has sent nothing when the answer is no.
 */
export function continueWhenWanted(app: App): void {
  const waiting = new WeakSet<IncomingMessage>();
  app.server.on("checkContinue", (request, response) => {
    waiting.add(request);
    app.server.emit("request", request, response);
  });
  app.server.on("checkExpectation", (request, response) => {
    const detail = "Only 100-continue can be expected. Send the request without the Expect header.";
    const body = problemBody(
      new Problem("expectation-failed", detail),
      requestIdOf(request),
      pathOf({ url: request.url ?? "/" }),
    );
    const text = JSON.stringify(body);
    response.writeHead(body.status, {
      "Content-Type": PROBLEM_JSON,
      "Content-Length": Buffer.byteLength(text),
      "X-Request-Id": body.requestId,
      Connection: "close",
    });
    response.end(text);
  });
  app.addHook("preParsing", (request, reply, body, done) => {
    const refusal = tooLarge(request);
    if (refusal !== undefined) return done(refusal);
    if (waiting.delete(request.raw) && isReadable(request)) reply.raw.writeContinue();
    done(null, body);
  });

  function isReadable({ headers }: FastifyRequest): boolean {
    const type = headers["content-type"];
    return type === undefined || app.hasContentTypeParser(type.split(";", 1)[0]?.trim() ?? "");
  }
}

function tooLarge(request: FastifyRequest): Problem | undefined {
  const given = request.headers["content-length"];
  if (given === undefined) return undefined;
  const { bodyLimit } = request.routeOptions;
  const length = Number(given);
  if (bodyLimit === undefined || length <= bodyLimit) return undefined;
  return new Problem("body-too-large", `The body has ${length} bytes; at most ${bodyLimit} are taken here.`, {
    headers: { Connection: "close" },
  });
}
