import { defineKind } from "../store/kind.ts";
import { recordQueries } from "../store/record-queries.ts";
import { RouterSchema } from "./schema.ts";

export const routerKind = defineKind({
  type: "router",
  noun: "router",
  idPrefix: "router",
  path: "/v1/routers",
  tag: { name: "routers", description: "The shop's routers and their speed dials." },
  schema: RouterSchema,
  table: "routers",
});

export const routers = recordQueries(routerKind);
