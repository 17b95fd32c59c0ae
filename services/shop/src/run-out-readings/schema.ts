import { BIT_RANGES } from "@rimwise/domain";
import Type, { type Static } from "typebox";
import { idField, keptFields, momentField, referenceField } from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { within } from "../http/range.ts";
import { ref } from "../http/reference.ts";

const runOutFields = {
  bitId: referenceField("the bit"),
  routerId: referenceField("the router it was clamped in"),
  colletId: Type.Optional(referenceField("the collet it was clamped in")),
  runOutMm: Type.Number({ ...within(BIT_RANGES.runOutMm), description: "Total indicator reading." }),
  instrument: Type.String({
    minLength: 1,
    maxLength: 100,
    pattern: "\\S",
    description: "What it was read with, such as a dial indicator.",
  }),
};

export const NewRunOutSchema = Type.Object(
  { readAt: Type.Optional(momentField("When it was read; default: now.")), ...runOutFields },
  { $id: "NewRunOutReading", description: "A bit's run-out in one router.", additionalProperties: false },
);

export const RunOutSchema = Type.Object(
  {
    id: idField("runout"),
    personId: Type.Optional(referenceField("who read it")),
    readAt: momentField("When it was read."),
    ...runOutFields,
    ...keptFields,
  },
  { $id: "RunOutReading", description: "A bit's run-out in one router.", additionalProperties: false },
);

export const RunOutPageSchema = pageSchema("RunOutReadingPage", ref(RunOutSchema), "Readings, oldest first.");

/** The components this resource answers and takes. */
export const RUN_OUT_SCHEMAS = [NewRunOutSchema, RunOutSchema, RunOutPageSchema];

export type NewRunOut = Static<typeof NewRunOutSchema>;

export type RunOutRecord = Static<typeof RunOutSchema>;
