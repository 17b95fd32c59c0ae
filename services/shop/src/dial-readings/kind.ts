import { defineKind } from "../store/kind.ts";
import { recordQueries } from "../store/record-queries.ts";
import { ReadingSchema } from "./schema.ts";

export const dialReadingKind = defineKind({
  type: "dial-reading",
  noun: "dial reading",
  idPrefix: "reading",
  path: "/v1/dial-readings",
  tag: { name: "dialReadings", description: "Speeds read at the marks of dials." },
  schema: ReadingSchema,
  table: "dial_readings",
});

export const dialReadings = recordQueries(dialReadingKind);
