import { DomainError, dialSpeeds, type Policy, unlikelyReadingFaults } from "@rimwise/domain";
import { callerOf } from "../access/caller.ts";
import type { App } from "../http/app-type.ts";
import { withoutUndefined } from "../http/given.ts";
import { happenedAt } from "../http/moment.ts";
import { listRecordsRoute, readRoute, requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { createRoute } from "../http/write-routes.ts";
import { notValid } from "../problems/problem.ts";
import { routers } from "../routers/kind.ts";
import type { RouterRecord } from "../routers/schema.ts";
import { shopPolicy } from "../shop-policy/reads.ts";
import { creation, newRecord } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import { holdAgainst } from "../usable-routers/reads.ts";
import { dialReadingKind, dialReadings } from "./kind.ts";
import {
  type NewReading,
  NewReadingSchema,
  READING_SCHEMAS,
  ReadingPageSchema,
  type ReadingRecord,
  ReadingSchema,
} from "./schema.ts";

const READ = { scope: "routers:read", tag: "dialReadings", of: dialReadings } as const;

export function dialReadingRoutes(app: App, doors: Doors): void {
  for (const schema of READING_SCHEMAS) app.addSchema(schema);

  listRecordsRoute(app, doors, {
    ...READ,
    path: "/v1/dial-readings",
    operationId: "listDialReadings",
    summary: "List speeds read at the marks of dials, those that have lapsed too",
    page: ReadingPageSchema,
    filters: { routerId: "Of this router." },
  });

  readRoute(app, doors, {
    ...READ,
    path: "/v1/dial-readings/:dialReadingId",
    parameters: { dialReadingId: "a dial reading" },
    operationId: "getDialReading",
    summary: "Read a dial reading",
  });

  createRoute(
    app,
    doors,
    {
      scope: "routers:write",
      tag: "dialReadings",
      path: "/v1/routers/:routerId/dial-readings",
      operationId: "createDialReading",
      summary:
        "Enter the speed read at one mark; one that does not fit the router or other readings must be confirmed",
      body: NewReadingSchema,
      answer: ReadingSchema,
      location: ({ id }) => `${dialReadingKind.path}/${id}`,
    },
    function* ({ params: { routerId }, body, request, at }) {
      const router = requireFound(routers.kind, routerId, yield* routers.find(routerId));
      const policy = yield* shopPolicy();
      requireMark(router, body, policy);
      const { isBacked, against } = yield* holdAgainst(body, router, at, policy);
      const unlikely = unlikelyReadingFaults(router, body, against);
      if (unlikely.length > 0 && !isBacked && body.isConfirmed !== true) throw new DomainError(unlikely);
      const { readAt, ...given } = body;
      const { personId } = callerOf(request);
      const fields = withoutUndefined({
        routerId,
        personId,
        ...given,
        readAt: happenedAt(readAt, at, "/readAt"),
      });
      const record: ReadingRecord = newRecord(newId(dialReadingKind.idPrefix), fields, at);
      return { changes: [creation(dialReadingKind, record)], answer: record };
    },
  );
}

function requireMark(router: RouterRecord, { mark }: NewReading, policy: Policy): void {
  const marks = dialSpeeds(router, policy).flatMap((each) => each.mark ?? []);
  if (marks.includes(mark)) return;
  const accepted =
    marks.length > 0
      ? `a mark from ${marks[0]} to ${marks.at(-1)} that the dial can be set to`
      : "nothing: describe the router's dial first";
  throw notValid([
    { in: "body", pointer: "/mark", message: "The router's dial has no such mark.", accepted },
  ]);
}
