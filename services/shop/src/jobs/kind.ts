import { defineKind } from "../store/kind.ts";
import { JobEventFieldsSchema, JobSchema } from "./schema.ts";

export const jobKind = defineKind({
  type: "job",
  noun: "job",
  idPrefix: "job",
  path: "/v1/jobs",
  tag: { name: "jobs", description: "From a list of parts to the bits, set-ups and hours of a day's work." },
  schema: JobSchema,
  shown: JobEventFieldsSchema,
  table: "jobs",
  // Its schema is a reference, as every list of codes is.
  columnTypes: { state: "text" },
});
