import type { App } from "../http/app-type.ts";
import { ReasonSchema } from "../http/reason.ts";
import type { Doors } from "../http/routes.ts";
import { actRoute } from "../http/write-routes.ts";
import { Problem } from "../problems/problem.ts";
import type { Decision } from "../store/changes.ts";
import { bitAfter } from "./decide.ts";
import { bits } from "./reads.ts";
import { type BitRecord, BitSchema } from "./schema.ts";
import { BitRetirementSchema, STANDING_SCHEMAS } from "./standing-schema.ts";

const IN_CHARGE = { scope: "inspections:write", tag: "bits", of: bits, answer: BitSchema } as const;

/** What people in charge do to the state of a bit. None needs an If-Match: a dangerous bit must go whatever else changed. */
export function bitStateRoutes(app: App, doors: Doors): void {
  for (const schema of STANDING_SCHEMAS) app.addSchema(schema);

  actRoute(
    app,
    doors,
    {
      ...IN_CHARGE,
      path: "/v1/bits/:bitId/hold",
      operationId: "holdBit",
      summary: "Take a bit out of use until it is released",
      body: ReasonSchema,
    },
    (bit, { body: { because }, at }) => {
      requireNotRetired(bit);
      return decided(bitAfter(bit, "held", { hold: { since: at, because, cause: "person" } }, at));
    },
  );

  actRoute(
    app,
    doors,
    {
      ...IN_CHARGE,
      path: "/v1/bits/:bitId/release",
      operationId: "releaseBit",
      summary: "Let a held bit be used again; whoever is in charge has looked at it",
      body: ReasonSchema,
    },
    (bit, { at }) => {
      requireNotRetired(bit);
      if (bit.hold === undefined) throw new Problem("state-not-fitting", `Bit ${bit.id} is not held.`);
      return decided(bitAfter(bit, "released", { hold: undefined }, at));
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
    (bit, { body: { because, isReplaced = false }, at }) => {
      const retirement = { at: bit.retirement?.at ?? at, because, isReplaced };
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
        throw new Problem("state-not-fitting", `Bit ${bit.id} was sent at ${bit.sentToSharpeningAt}.`);
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
  throw new Problem("bit-not-usable", `Bit ${id} is retired for good: ${retirement.because}`);
}
