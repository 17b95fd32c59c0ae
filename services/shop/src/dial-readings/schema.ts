import { ROUTER_RANGES } from "@rimwise/domain";
import Type, { type Static } from "typebox";
import { idField, keptFields, momentField, referenceField } from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { within } from "../http/range.ts";
import { ref } from "../http/reference.ts";
import { MarkSchema } from "../routers/schema.ts";

const readingFields = {
  mark: ref(MarkSchema),
  rpm: Type.Number({ ...within(ROUTER_RANGES.rpm), description: "Speed read, without load." }),
  isConfirmed: Type.Optional(
    Type.Boolean({
      description:
        "Somebody stands by it although it does not fit the router's range or other readings. Until a second reading agrees it counts only if it is the faster.",
    }),
  ),
  instrument: Type.String({
    minLength: 1,
    maxLength: 100,
    pattern: "\\S",
    description: "What it was read with, such as an optical tachometer.",
  }),
};

export const NewReadingSchema = Type.Object(
  { readAt: Type.Optional(momentField("When it was read; default: now.")), ...readingFields },
  { $id: "NewDialReading", description: "A speed read at one mark.", additionalProperties: false },
);

export const ReadingSchema = Type.Object(
  {
    id: idField("reading"),
    routerId: Type.String({ description: "The router." }),
    personId: Type.Optional(referenceField("who read it")),
    readAt: momentField("When it was read."),
    ...readingFields,
    ...keptFields,
  },
  { $id: "DialReading", description: "A speed read at one mark.", additionalProperties: false },
);

export const ReadingPageSchema = pageSchema(
  "DialReadingPage",
  ref(ReadingSchema),
  "Readings, oldest entry first.",
);

/** The components this resource answers and takes. */
export const READING_SCHEMAS = [NewReadingSchema, ReadingSchema, ReadingPageSchema];

export type NewReading = Static<typeof NewReadingSchema>;

export type ReadingRecord = Static<typeof ReadingSchema>;
