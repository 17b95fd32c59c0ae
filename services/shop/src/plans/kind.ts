import { defineKind } from "../store/kind.ts";
import { recordQueries } from "../store/record-queries.ts";
import { ShownPlanSchema, StoredPlanSchema } from "./schema.ts";

export const planKind = defineKind({
  type: "plan",
  noun: "plan",
  idPrefix: "plan",
  path: "/v1/plans",
  tag: {
    name: "plans",
    description: "Plans for cuts: speed, dial mark, passes and order of work, every limit explained.",
  },
  schema: StoredPlanSchema,
  shown: ShownPlanSchema,
  table: "plans",
  queryColumns: {
    bitId: "derived-text",
    routerId: "derived-text",
    woodId: "derived-text",
    cutKind: "derived-text",
    verdict: "derived-text",
  },
});

export const plans = recordQueries(planKind);
