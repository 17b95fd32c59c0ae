import type { HTTPMethods } from "fastify";
import { Problem } from "../problems/problem.ts";
import type { App } from "./app-type.ts";

const METHODS: readonly HTTPMethods[] = ["GET", "HEAD", "POST", "PUT", "PATCH", "DELETE"];

/**
 * Notes the methods of every route registered after it. The function it returns, called last,
 * answers OPTIONS at those paths with 204 and `Allow` (RFC 9110, section 9.3.7), and all others with 405 and `Allow`.
 */
export function refuseOtherMethods(app: App): () => void {
  const allowedByUrl = new Map<string, Set<string>>();
  let isCollecting = true;
  app.addHook("onRoute", ({ url, method }) => {
    if (!isCollecting || url === "*") return;
    const allowed = allowedByUrl.get(url) ?? new Set();
    for (const each of [method].flat()) allowed.add(each);
    allowedByUrl.set(url, allowed);
  });
  return () => {
    isCollecting = false;
    for (const [url, methods] of allowedByUrl) {
      const method = METHODS.filter((each) => !methods.has(each));
      const allow = [...methods, "OPTIONS"].sort().join(", ");
      const hidden = { url, schema: { hide: true }, config: { scope: "public" } } as const;
      app.route({ ...hidden, method, handler: () => refuse(allow) });
      app.route({
        ...hidden,
        method: "OPTIONS",
        handler: (_request, reply) => reply.code(204).header("Allow", allow).send(),
      });
    }
  };
}

function refuse(allow: string): never {
  throw new Problem("method-not-allowed", `This resource takes ${allow}.`, { headers: { Allow: allow } });
}
