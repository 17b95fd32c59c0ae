import { defineKind } from "../store/kind.ts";
import { recordQueries } from "../store/record-queries.ts";
import { TrialSchema } from "./schema.ts";

export const trialKind = defineKind({
  type: "speed-trial",
  noun: "speed trial",
  idPrefix: "trial",
  path: "/v1/speed-trials",
  tag: { name: "speedTrials", description: "What bits did at which speed, and the next speed to try." },
  schema: TrialSchema,
  table: "speed_trials",
});

export const trials = recordQueries(trialKind);
