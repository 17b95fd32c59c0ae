import { defineKind } from "../store/kind.ts";
import { KeyRecordSchema, KeySchema } from "./schema.ts";

export const keyKind = defineKind({
  type: "key",
  noun: "key",
  idPrefix: "key",
  path: "/v1/keys",
  tag: { name: "keys", description: "Who may call, and what they may do." },
  schema: KeyRecordSchema,
  shown: KeySchema,
  table: "keys",
});
