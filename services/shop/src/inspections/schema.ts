import Type, { type Static } from "typebox";
import { idField, keptFields, momentField, notesField, referenceField } from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { ref } from "../http/reference.ts";

/** What may be found on a bit (common practice). */
export const BIT_FINDINGS = [
  "chipped-tooth",
  "pitch-build-up",
  "worn-bearing",
  "scored-shank",
  "cracked-braze",
  "heat-discolouration",
  "bent",
] as const;

export type BitFinding = (typeof BIT_FINDINGS)[number];

export const INSPECTION_EFFECTS = ["note", "hold", "retire"] as const;

const inspectionFields = {
  findings: Type.Array(Type.Enum([...BIT_FINDINGS], { type: "string" }), {
    maxItems: BIT_FINDINGS.length,
    uniqueItems: true,
    description: "What was found; empty if all is well.",
  }),
  effect: Type.Enum([...INSPECTION_EFFECTS], {
    type: "string",
    description:
      "`note` only records; `hold` takes the bit out of use until it is released; `retire` ends it for good. A cracked braze or a bent shank allows nothing less than `hold`.",
  }),
  notes: Type.Optional(notesField),
};

export const NewInspectionSchema = Type.Object(
  {
    inspectedAt: Type.Optional(momentField("When it was looked at; default: now.")),
    ...inspectionFields,
  },
  { $id: "NewInspection", description: "A bit was looked at.", additionalProperties: false },
);

export const InspectionSchema = Type.Object(
  {
    id: idField("inspection"),
    bitId: Type.String({ description: "The bit." }),
    personId: Type.Optional(referenceField("who looked")),
    inspectedAt: momentField("When it was looked at."),
    ...inspectionFields,
    ...keptFields,
  },
  { $id: "Inspection", description: "One look at a bit.", additionalProperties: false },
);

export const InspectionPageSchema = pageSchema(
  "InspectionPage",
  ref(InspectionSchema),
  "Inspections, oldest first.",
);

/** The components this resource answers and takes. */
export const INSPECTION_SCHEMAS = [NewInspectionSchema, InspectionSchema, InspectionPageSchema];

export type NewInspection = Static<typeof NewInspectionSchema>;

export type InspectionRecord = Static<typeof InspectionSchema>;
