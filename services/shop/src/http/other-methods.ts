import type { FastifyReply, FastifyRequest, HTTPMethods } from "fastify";
import findMyWay from "find-my-way";
import { Problem, pathOf } from "../problems/problem.ts";
import type { App } from "./app-type.ts";

/**
 * Notes the methods of every route registered after it, and answers requests that no route takes: OPTIONS at the path of a route with
 * 204 and `Allow` (RFC 9110, section 9.3.7), another method there with 405 and `Allow`, and everything elsewhere with 404. Call the
 * function it returns last.
 */
export function answerOtherMethods(app: App): () => void {
  const methodsByUrl = new Map<string, Set<HTTPMethods>>();
  let isCollecting = true;
  app.addHook("onRoute", ({ url, method }) => {
    if (!isCollecting || url === "*") return;
    const methods = methodsByUrl.get(url) ?? new Set();
    for (const each of [method].flat()) methods.add(each);
    methodsByUrl.set(url, methods);
  });

  // A route of its own for each of these would double the start: the paths are looked through only when somebody asks so.
  let allowedAt: ((path: string) => string | undefined) | undefined;
  app.setNotFoundHandler((request, reply) => {
    allowedAt ??= finderOf(methodsByUrl);
    const path = pathOf(request);
    const allow = allowedAt(path);
    if (allow === undefined) throw new Problem("not-found", `Nothing is at ${path}.`);
    if (request.method === "OPTIONS") return reply.code(204).header("Allow", allow).send();
    throw new Problem("method-not-allowed", `This resource takes ${allow}.`, { headers: { Allow: allow } });
  });

  return () => {
    isCollecting = false;
    const paths = [...methodsByUrl].map(([url, methods]) => ({ url, parts: url.split("/"), methods }));
    const widePaths = paths.filter(({ parts }) => parts.some(isParameter));
    for (const path of paths) {
      const { url } = path;
      const method = [...takenElsewhere(path, widePaths)].filter((each) => !path.methods.has(each));
      const handler = (_request: FastifyRequest, reply: FastifyReply) => reply.callNotFound();
      if (method.length > 0)
        app.route({ url, method, schema: { hide: true }, config: { scope: "public" }, handler });
    }
  };
}

type RoutedPath = {
  readonly url: string;
  readonly parts: readonly string[];
  readonly methods: ReadonlySet<HTTPMethods>;
};

/** The methods that a route with a parameter would take at this path, which has a route of its own: /bits/labels is not a bit. */
function takenElsewhere({ url, parts }: RoutedPath, widePaths: readonly RoutedPath[]): Set<HTTPMethods> {
  const wider = widePaths.filter(
    (other) =>
      other.parts.length === parts.length &&
      other.url !== url &&
      other.parts.every((part, index) => part === parts[index] || isParameter(part)),
  );
  return new Set(wider.flatMap(({ methods }) => [...methods]));
}

function isParameter(part: string): boolean {
  return part.startsWith(":");
}

/** What is allowed at a path, by the patterns of the routes. */
function finderOf(
  methodsByUrl: ReadonlyMap<string, ReadonlySet<HTTPMethods>>,
): (path: string) => string | undefined {
  const allow = new Map<unknown, string>();
  const paths = findMyWay();
  for (const [url, methods] of methodsByUrl) {
    const store = {};
    allow.set(store, [...methods, "OPTIONS"].sort().join(", "));
    paths.on("GET", url, () => {}, store);
  }
  return (path) => allow.get(paths.find("GET", path)?.store);
}
