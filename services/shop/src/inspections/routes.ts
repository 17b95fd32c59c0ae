import { callerOf } from "../access/caller.ts";
import { bits } from "../bits/reads.ts";
import type { App } from "../http/app-type.ts";
import { listRecordsRoute, readRoute, requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { createRoute } from "../http/write-routes.ts";
import { shopPolicy } from "../shop-policy/reads.ts";
import { newId } from "../store/id.ts";
import { uses } from "../uses/kind.ts";
import { inspectBit } from "./decide.ts";
import { inspectionKind, inspections } from "./kind.ts";
import { INSPECTION_SCHEMAS, InspectionPageSchema, InspectionSchema, NewInspectionSchema } from "./schema.ts";

const READ = { scope: "inspections:read", tag: "inspections", of: inspections } as const;

/** Uses that an inspection which is entered late may not have seen. */
const MOST_USES = 5000;

export function inspectionRoutes(app: App, doors: Doors): void {
  for (const schema of INSPECTION_SCHEMAS) app.addSchema(schema);

  listRecordsRoute(app, doors, {
    ...READ,
    path: "/v1/inspections",
    operationId: "listInspections",
    summary: "List what was found on bits",
    page: InspectionPageSchema,
    filters: { bitId: "Of this bit." },
  });

  readRoute(app, doors, {
    ...READ,
    path: "/v1/inspections/:inspectionId",
    operationId: "getInspection",
    summary: "Read an inspection",
  });

  createRoute(
    app,
    doors,
    {
      scope: "inspections:write",
      tag: "inspections",
      path: "/v1/bits/:bitId/inspections",
      operationId: "createInspection",
      summary: "Enter an inspection; it may hold the bit or end it",
      body: NewInspectionSchema,
      answer: InspectionSchema,
      location: ({ id }) => `${inspectionKind.path}/${id}`,
    },
    function* ({ params: { bitId }, body, request, at }) {
      const bit = requireFound(bits.kind, bitId, yield* bits.find(bitId));
      const past = yield* uses.newest(MOST_USES, { bitId });
      const { personId } = callerOf(request);
      const id = newId(inspectionKind.idPrefix);
      const { record, changes } = inspectBit(id, bit, past, body, personId, at, yield* shopPolicy());
      return { changes, answer: record };
    },
  );
}
