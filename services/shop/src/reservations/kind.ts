import { defineKind } from "../store/kind.ts";
import { ReservationSchema } from "./schema.ts";

export const reservationKind = defineKind({
  type: "reservation",
  noun: "reservation",
  idPrefix: "reservation",
  path: "/v1/reservations",
  tag: { name: "reservations", description: "Bits that are kept for the days of a job." },
  schema: ReservationSchema,
  table: "reservations",
});
