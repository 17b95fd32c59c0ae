import { defineKind } from "../store/kind.ts";
import { recordQueries } from "../store/record-queries.ts";
import { ColletSchema } from "./schema.ts";

export const colletKind = defineKind({
  type: "collet",
  noun: "collet",
  idPrefix: "collet",
  path: "/v1/collets",
  tag: { name: "collets", description: "Routers' collets and their condition." },
  schema: ColletSchema,
  table: "collets",
});

export const collets = recordQueries(colletKind);
