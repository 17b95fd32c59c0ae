import Type, { type Static } from "typebox";
import { idField, keptFields } from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { ref } from "../http/reference.ts";

export const RESERVATION_STATES = ["kept", "released"] as const;

export const ReservationSchema = Type.Object(
  {
    id: idField("reservation"),
    bitId: Type.String({ description: "The bit." }),
    jobId: Type.String({ description: "The job it is kept for." }),
    personId: Type.Optional(Type.String({ description: "Who makes that job." })),
    from: Type.String({ format: "date", description: "The first day, in UTC." }),
    until: Type.String({ format: "date", description: "The last day, in UTC." }),
    state: Type.Enum([...RESERVATION_STATES], {
      type: "string",
      description: "Whether it is still kept; it is released when the job is done, dropped or back in draft.",
    }),
    ...keptFields,
  },
  {
    $id: "Reservation",
    description: "A bit that is kept for the days of a job.",
    additionalProperties: false,
  },
);

export const ReservationPageSchema = pageSchema(
  "ReservationPage",
  ref(ReservationSchema),
  "Reservations, oldest first.",
);

/** The components this resource answers. */
export const RESERVATION_SCHEMAS = [ReservationSchema, ReservationPageSchema];

export type ReservationRecord = Static<typeof ReservationSchema>;
