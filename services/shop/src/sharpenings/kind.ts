import { defineKind } from "../store/kind.ts";
import { recordQueries } from "../store/record-queries.ts";
import { SharpeningSchema } from "./schema.ts";

export const sharpeningKind = defineKind({
  type: "sharpening",
  noun: "sharpening",
  idPrefix: "sharpening",
  path: "/v1/sharpenings",
  tag: {
    name: "sharpenings",
    description: "What bits measured before and after, and what is left of an edge.",
  },
  schema: SharpeningSchema,
  table: "sharpenings",
});

export const sharpenings = recordQueries(sharpeningKind);
