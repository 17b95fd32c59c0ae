import type { HTTPMethods } from "fastify";
import { Problem } from "../problems/problem.ts";
import type { App } from "./app-type.ts";

const METHODS: readonly HTTPMethods[] = ["GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS"];

/**
 * Notes the methods of every route registered after it. The function it returns, called last,
 * answers all others at those paths with 405 and `Allow`.
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
    for (const [url, allowed] of allowedByUrl) {
      const method = METHODS.filter((each) => !allowed.has(each));
      app.route({
        method,
        url,
        schema: { hide: true },
        config: { scope: "public" },
        handler: () => refuse(allowed),
      });
    }
  };
}

function refuse(allowed: ReadonlySet<string>): never {
  const allow = [...allowed].sort().join(", ");
  throw new Problem("method-not-allowed", `This resource takes ${allow}.`, { headers: { Allow: allow } });
}
