import { defineKind } from "../store/kind.ts";
import { ownOnly, restrictedQueries } from "../store/record-queries.ts";
import { UseSchema } from "./schema.ts";

export const useKind = defineKind({
  type: "use",
  noun: "use",
  idPrefix: "use",
  path: "/v1/uses",
  tag: { name: "uses", description: "Work that was done, and what happened." },
  schema: UseSchema,
  table: "uses",
});

export const uses = restrictedQueries(useKind, ownOnly(useKind));
