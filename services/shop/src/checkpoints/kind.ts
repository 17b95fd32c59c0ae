import { defineKind } from "../store/kind.ts";
import { CheckpointSchema } from "./schema.ts";

export const checkpointKind = defineKind({
  type: "checkpoint",
  noun: "checkpoint",
  idPrefix: "checkpoint",
  path: "/v1/events/checkpoints",
  tag: { name: "checkpoints", description: "Signed statements of how far the history reached." },
  schema: CheckpointSchema,
  table: "checkpoints",
});
