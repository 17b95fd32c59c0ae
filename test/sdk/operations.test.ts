import { readFileSync } from "node:fs";
import { createClient } from "@rimwise/client";
import { describe, expect, it } from "vitest";
import { namesOperation } from "./method-names.ts";

type Operation = {
  operationId: string;
  tags: [string];
  requestBody?: object;
  responses: Record<string, { content?: object }>;
  parameters?: { name: string; in: string }[];
};

const description: { paths: Record<string, Record<string, Operation>> } = JSON.parse(
  readFileSync(new URL("../../openapi/openapi.json", import.meta.url), "utf8"),
);
const operations = Object.entries(description.paths).flatMap(([path, methods]) =>
  Object.entries(methods).map(([method, operation]) => ({ method: method.toUpperCase(), path, operation })),
);
const methodNames = Object.entries(clientSending([])).flatMap(([resource, methods]) =>
  Object.keys(methods).map((verb) => `${resource}.${verb}`),
);

describe("every operation of the API description is one method of the client", () => {
  it.each(operations.map((each) => [each.operation.operationId, each] as const))("%s", async (_id, each) => {
    const names = methodNames.filter((name) => namesOperation(name, each.operation));
    expect(names).toHaveLength(1);
    expect(await sentBy(names[0] ?? "", each.operation)).toEqual([`${each.method} ${filled(each.path)}`]);
  });

  it("and every method is one operation", () => {
    for (const name of methodNames) {
      expect(
        operations.filter(({ operation }) => namesOperation(name, operation)),
        name,
      ).toHaveLength(1);
    }
  });
});

/** What calling the method puts on the wire. */
async function sentBy(name: string, operation: Operation): Promise<string[]> {
  const sent: string[] = [];
  const [resource = "", verb = ""] = name.split(".");
  const method: unknown = Reflect.get(Reflect.get(clientSending(sent, answerTo(operation)), resource), verb);
  if (typeof method !== "function") throw new Error(`${name} is not a method`);
  const answer: unknown = Reflect.apply(method, undefined, argumentsOf(operation));
  if (answer instanceof Promise) await answer;
  // One is enough: what follows a stream never ends by itself.
  else if (isIterable(answer)) for await (const _item of answer) break;
  return sent;
}

function argumentsOf({ parameters = [], requestBody }: Operation): unknown[] {
  const inPath = parameters.filter((parameter) => parameter.in === "path");
  const needsVersion = parameters.some(({ name }) => name.toLowerCase() === "if-match");
  return [...inPath.map(() => "an-id"), ...(requestBody ? [{}] : []), ...(needsVersion ? [1] : [])];
}

/** An answer of the type that the operation is documented to have. */
function answerTo({ responses }: Operation): () => Response {
  const [type] = Object.values(responses).flatMap(({ content = {} }) => Object.keys(content));
  if (responses["200"] === undefined && responses["204"] !== undefined)
    return () => new Response(null, { status: 204 });
  const text = JSON.stringify({ data: [], nextCursor: null });
  return () => new Response(text, { headers: { "content-type": type ?? "" } });
}

function clientSending(sent: string[], answer = () => Response.json({})) {
  return createClient({
    baseUrl: "http://shop.test",
    fetch: async (request) => {
      sent.push(`${request.method} ${new URL(request.url).pathname}`);
      const isStream = request.headers.get("accept")?.includes("text/event-stream");
      return isStream
        ? new Response("data: {}\n\n", { headers: { "content-type": "text/event-stream" } })
        : answer();
    },
  });
}

function filled(path: string): string {
  return path.replace(/\{\w+\}/g, "an-id");
}

function isIterable(value: unknown): value is AsyncIterable<unknown> {
  return typeof value === "object" && value !== null && Symbol.asyncIterator in value;
}
