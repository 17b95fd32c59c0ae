import type { FastifyReply, FastifyRequest } from "fastify";
import type { App } from "../http/app-type.ts";
import { etagOf } from "../http/conditional.ts";
import { requireFound } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { changedMeanwhile, decidedAnew, stampOf, type Write } from "../http/write.ts";
import type { Scope } from "../keys/scopes.ts";
import { Problem } from "../problems/problem.ts";
import { bitAfter } from "./decide.ts";
import { BitPath } from "./path.ts";
import type { BitReads } from "./reads.ts";
import { type BitRecord, BitSchema } from "./schema.ts";
import { BitRetirementSchema, reasonBody, STANDING_SCHEMAS } from "./standing-schema.ts";

type Parts = { readonly reads: BitReads; readonly write: Write; readonly now: () => Date };
type Decided = ReturnType<typeof bitAfter>;

/** What people in charge do to where a bit stands. None needs an If-Match: a dangerous bit must go whatever else changed. */
export function bitStandingRoutes(app: App, { reads, write, now }: Parts): void {
  for (const schema of STANDING_SCHEMAS) app.addSchema(schema);

  app.post(
    "/v1/bits/:bitId/hold",
    {
      config: act("inspections:write"),
      schema: {
        operationId: "holdBit",
        tags: ["bits"],
        summary: "Take a bit out of use until it is released",
        params: BitPath,
        body: reasonBody,
        response: { 200: ref(BitSchema) },
      },
    },
    (request, reply) =>
      done(request, reply, request.params.bitId, (bit, at) => {
        requireNotRetired(bit);
        const hold = { since: at, because: request.body.because, cause: "person" } as const;
        return bitAfter(bit, "held", { hold }, at);
      }),
  );

  app.post(
    "/v1/bits/:bitId/release",
    {
      config: act("inspections:write"),
      schema: {
        operationId: "releaseBit",
        tags: ["bits"],
        summary: "Let a held bit be used again; whoever is in charge has looked at it",
        params: BitPath,
        body: reasonBody,
        response: { 200: ref(BitSchema) },
      },
    },
    (request, reply) =>
      done(request, reply, request.params.bitId, (bit, at) => {
        requireNotRetired(bit);
        if (bit.hold === undefined) throw new Problem("state-not-fitting", `Bit ${bit.id} is not held.`);
        return bitAfter(bit, "released", { hold: undefined }, at);
      }),
  );

  app.post(
    "/v1/bits/:bitId/retire",
    {
      config: act("inspections:write"),
      schema: {
        operationId: "retireBit",
        tags: ["bits"],
        summary: "Take a bit out of use for good, or say that a retired one has been replaced",
        params: BitPath,
        body: ref(BitRetirementSchema),
        response: { 200: ref(BitSchema) },
      },
    },
    (request, reply) =>
      done(request, reply, request.params.bitId, (bit, at) => {
        const { because, isReplaced = false } = request.body;
        const retirement = { at: bit.retirement?.at ?? at, because, isReplaced };
        return bitAfter(bit, "retired", { retirement }, at);
      }),
  );

  app.post(
    "/v1/bits/:bitId/send-to-sharpening",
    {
      config: act("sharpenings:write"),
      schema: {
        operationId: "sendBitToSharpening",
        tags: ["bits"],
        summary: "Send a bit away to be sharpened",
        params: BitPath,
        response: { 200: ref(BitSchema) },
      },
    },
    (request, reply) =>
      done(request, reply, request.params.bitId, (bit, at) => {
        requireNotRetired(bit);
        if (bit.loanId !== undefined) {
          throw new Problem("bit-on-loan", `Bit ${bit.id} is out on loan ${bit.loanId}. Take it back first.`);
        }
        if (bit.sentToSharpeningAt !== undefined) {
          throw new Problem("state-not-fitting", `Bit ${bit.id} was sent at ${bit.sentToSharpeningAt}.`);
        }
        return bitAfter(bit, "sent-to-sharpening", { sentToSharpeningAt: at, placeId: undefined }, at);
      }),
  );

  function done(
    request: FastifyRequest,
    reply: FastifyReply,
    id: string,
    decide: (bit: BitRecord, at: string) => Decided,
  ): Promise<BitRecord> {
    return decidedAnew(async () => {
      const bit = requireFound("bit", id, await reads.find(id));
      const stamp = stampOf(request, now());
      const { record, change } = decide(bit, stamp.at);
      await write({ stamp, changes: [change] }, changedMeanwhile);
      reply.header("ETag", etagOf(record.version));
      return record;
    });
  }
}

function act(scope: Scope) {
  return { scope, operation: "act" } as const;
}

function requireNotRetired({ id, retirement }: BitRecord): void {
  if (retirement === undefined) return;
  throw new Problem("bit-not-usable", `Bit ${id} is retired for good: ${retirement.because}`);
}
