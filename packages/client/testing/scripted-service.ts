import type { AnyOptions, Operation } from "../src/operation.ts";
import { type ClientOptions, type Fetch, settingsFrom } from "../src/options.ts";
import { createCaller } from "../src/request.ts";

type Scripted = Response | Error | (() => Promise<Response>);

export const READ: Operation = {
  method: "GET",
  path: "/v1/bits/{bitId}",
  pathParameters: { bitId: "bit_1" },
};
export const CREATE: Operation = {
  method: "POST",
  path: "/v1/bits",
  body: { name: "Cove" },
};
export const CHANGE: Operation = { ...READ, method: "PATCH", body: { name: "Cove" } };

/** A fetch that gives these answers in turn and keeps what it was asked. */
export function answering(...answers: Scripted[]) {
  const requests: Request[] = [];
  const fetch: Fetch = async (request) => {
    requests.push(request);
    const answer = answers[requests.length - 1];
    if (answer === undefined) throw new Error("asked more often than expected");
    if (answer instanceof Error) throw answer;
    return answer instanceof Response ? answer : answer();
  };
  return { fetch, requests };
}

/** An answer as the service gives it. */
export function json(status: number, body: unknown, headers: Record<string, string> = {}): Response {
  return new Response(JSON.stringify(body), {
    status,
    headers: { "content-type": "application/json", ...headers },
  });
}

/** An error as the service gives it. */
export function problem(status: number, code: string, headers: Record<string, string> = {}): Response {
  const body = {
    type: `urn:rimwise:problem:${code}`,
    title: "No",
    status,
    detail: "No.",
    code,
    requestId: "r1",
  };
  return json(status, body, { ...headers, "content-type": "application/problem+json" });
}

/** Sends one operation through a client of this fetch. */
export function send(
  fetch: Fetch,
  operation: Operation,
  options: AnyOptions = {},
  settings: Partial<ClientOptions> = {},
) {
  const caller = createCaller(settingsFrom({ baseUrl: "http://shop.test/", key: "k3y", fetch, ...settings }));
  return caller.send<{ id: string }>(operation, options);
}
