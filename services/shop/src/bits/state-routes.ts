import { actorOf } from "../access/caller.ts";
import type { App } from "../http/app-type.ts";
import { ReasonSchema } from "../http/reason.ts";
import type { Doors } from "../http/routes.ts";
import { actRoute } from "../http/write-routes.ts";
import { inspections } from "../inspections/kind.ts";
import { releaseBit } from "../inspections/release.ts";
import { Problem } from "../problems/problem.ts";
import { sharpenings } from "../sharpenings/kind.ts";
import type { Decision } from "../store/changes.ts";
import { requireHoldLeft } from "../uses/holds.ts";
import { bitAfter } from "./decide.ts";
import { bits } from "./reads.ts";
import { type BitRecord, BitSchema } from "./schema.ts";
import { BitRetirementSchema, HeldBitSchema, heldBit, STANDING_SCHEMAS } from "./standing-schema.ts";

/** Inspections and sharpenings of a bit that a release looks through. */
const MOST_LOOKED_THROUGH = 1000;

const IN_CHARGE = { scope: "inspections:write", tag: "bits", of: bits, answer: BitSchema } as const;

/** What people in charge do to the state of a bit. None needs an If-Match: a dangerous bit must go whatever else changed. */
export function bitStateRoutes(app: App, doors: Doors): void {
  for (const schema of STANDING_SCHEMAS) app.addSchema(schema);

  actRoute(
    app,
    doors,
    {
      ...IN_CHARGE,
      scope: "bits:hold",
      path: "/v1/bits/:bitId/hold",
      operationId: "holdBit",
      summary: "Take a bit out of use until somebody in charge has looked at it; anybody may",
      description:
        "A bit that is held already stays held for its first reason, unless somebody in charge says another. Whoever is not in charge holds as many in a day as the policy's holdsPerDayMax says; GET /v1/stock/held shows who held what.",
      body: ReasonSchema,
      answer: HeldBitSchema,
    },
    function* (bit, { body: { reason }, request, at }) {
      requireNotRetired(bit);
      const actor = actorOf(request);
      if (bit.hold !== undefined && !actor.isByStaff) return { changes: [], answer: heldBit(bit) };
      if (!actor.isByStaff) yield* requireHoldLeft(actor.by, at);
      const held = bitAfter(bit, "held", { hold: { since: at, reason, cause: "person", ...actor } }, at);
      return { changes: held.changes, answer: heldBit(held.record) };
    },
  );

  actRoute(
    app,
    doors,
    {
      ...IN_CHARGE,
      path: "/v1/bits/:bitId/release",
      operationId: "releaseBit",
      summary: "Let a held bit be used again, after an inspection made since it was held",
      body: ReasonSchema,
    },
    function* (bit, { at }) {
      requireNotRetired(bit);
      const looks = yield* inspections.newest(MOST_LOOKED_THROUGH, { bitId: bit.id });
      const repairs = yield* sharpenings.newest(MOST_LOOKED_THROUGH, { bitId: bit.id });
      return decided(releaseBit(bit, looks, repairs, at));
    },
  );

  actRoute(
    app,
    doors,
    {
      ...IN_CHARGE,
      path: "/v1/bits/:bitId/retire",
      operationId: "retireBit",
      summary: "Take a bit out of use for good, or say that a retired one has been replaced",
      body: BitRetirementSchema,
    },
    (bit, { body: { reason, isReplaced = false }, at }) => {
      const retirement = { at: bit.retirement?.at ?? at, reason, isReplaced };
      return decided(bitAfter(bit, "retired", { retirement }, at));
    },
  );

  actRoute(
    app,
    doors,
    {
      ...IN_CHARGE,
      scope: "sharpenings:write",
      path: "/v1/bits/:bitId/send-to-sharpening",
      operationId: "sendBitToSharpening",
      summary: "Send a bit away to be sharpened",
    },
    (bit, { at }) => {
      requireNotRetired(bit);
      if (bit.loanId !== undefined) {
        throw new Problem("bit-on-loan", `Bit ${bit.id} is out on loan ${bit.loanId}. Take it back first.`);
      }
      if (bit.sentToSharpeningAt !== undefined) {
        throw new Problem("invalid-state", `Bit ${bit.id} was sent at ${bit.sentToSharpeningAt}.`);
      }
      return decided(bitAfter(bit, "sent-to-sharpening", { sentToSharpeningAt: at, placeId: undefined }, at));
    },
  );
}

function decided({ record, changes }: Decision<BitRecord>) {
  return { changes, answer: record };
}

function requireNotRetired({ id, retirement }: BitRecord): void {
  if (retirement === undefined) return;
  throw new Problem("bit-not-usable", `Bit ${id} is retired for good: ${retirement.reason}`);
}
