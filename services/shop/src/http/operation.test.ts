import Fastify from "fastify";
import { expect, test } from "vitest";
import type { App } from "./app-type.ts";
import { requireScopes } from "./operation.ts";

test("a route that does not say who may call it stops the start", () => {
  const app: App = Fastify();
  requireScopes(app);
  app.get("/open", { config: { scope: "public" } }, async () => "open");
  expect(() => app.get("/forgotten", async () => "forgotten")).toThrow(/GET \/forgotten declares no scope/);
});
