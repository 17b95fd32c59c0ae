import { defineKind } from "../store/kind.ts";
import { recordQueries } from "../store/record-queries.ts";
import { RunOutSchema } from "./schema.ts";

export const runOutKind = defineKind({
  type: "run-out-reading",
  noun: "run-out reading",
  idPrefix: "runout",
  path: "/v1/run-out-readings",
  tag: { name: "runOutReadings", description: "Run-out of bits as clamped in routers." },
  schema: RunOutSchema,
  table: "run_out_readings",
});

export const runOuts = recordQueries(runOutKind);
