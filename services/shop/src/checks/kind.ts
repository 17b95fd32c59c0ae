import { defineKind } from "../store/kind.ts";
import { ownOnly, restrictedQueries } from "../store/record-queries.ts";
import { CheckSchema } from "./schema.ts";

export const checkKind = defineKind({
  type: "check",
  noun: "check",
  idPrefix: "check",
  path: "/v1/checks",
  tag: { name: "checks", description: "May this person run this bit on this router at this mark, now?" },
  schema: CheckSchema,
  table: "checks",
});

export const checks = restrictedQueries(checkKind, ownOnly(checkKind));
