import type { Scope } from "../access/scopes.ts";
import type { App } from "./app-type.ts";

/**
 * What a route does. Documents and tests follow from it: a `read` takes an If-None-Match, `change` and `remove` an If-Match.
 * Whatever writes takes an Idempotency-Key.
 */
export type Operation = "list" | "read" | "create" | "change" | "remove" | "act";

declare module "fastify" {
  interface FastifyContextConfig {
    /** The scope a caller needs; `public` needs no key. A route without one stops the start. */
    scope?: Scope | "public";
    operation?: Operation;
  }
}

/** Stops the start at a route that does not say who may call it. Register before any route. */
export function requireScopes(app: App): void {
  app.addHook("onRoute", ({ method, url, config }) => {
    if (config?.scope === undefined) {
      throw new Error(`${String(method)} ${url} declares no scope: say which one in its config`);
    }
  });
}
