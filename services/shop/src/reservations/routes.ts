import type { App } from "../http/app-type.ts";
import { listRecordsRoute } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { reservations } from "./reads.ts";
import { RESERVATION_SCHEMAS, ReservationPageSchema } from "./schema.ts";

const READ = { scope: "bits:read", tag: "reservations", of: reservations } as const;

export function reservationRoutes(app: App, doors: Doors): void {
  for (const schema of RESERVATION_SCHEMAS) app.addSchema(schema);

  listRecordsRoute(app, doors, {
    ...READ,
    path: "/v1/reservations",
    operationId: "listReservations",
    summary: "List the bits that are or were kept for jobs",
    page: ReservationPageSchema,
    filters: {
      bitId: "Of this bit.",
      jobId: "For this job.",
      state: "Only what is still kept, or released.",
    },
  });
}
