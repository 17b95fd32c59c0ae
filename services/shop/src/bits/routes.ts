import Type from "typebox";
import type { AnswerOnce } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { etagOf, requireMatch } from "../http/conditional.ts";
import { PageQuery, sendPage } from "../http/paging.ts";
import { ref } from "../http/reference.ts";
import { stampOf, type Write } from "../http/write.ts";
import { Problem } from "../problems/problem.ts";
import { newId } from "../store/id.ts";
import { changeBit, createBit, removeBit } from "./decide.ts";
import type { BitReads } from "./reads.ts";
import { BIT_SCHEMAS, BitChangeSchema, BitPageSchema, BitSchema, NewBitSchema } from "./schema.ts";

type Parts = { reads: BitReads; write: Write; answerOnce: AnswerOnce; now: () => Date };

const BitPath = Type.Object({ bitId: Type.String({ description: "Id of a bit." }) });

export function bitRoutes(app: App, { reads, write, answerOnce, now }: Parts): void {
  for (const schema of BIT_SCHEMAS) app.addSchema(schema);

  app.get(
    "/v1/bits",
    {
      config: { scope: "bits:read", operation: "list" },
      schema: {
        operationId: "listBits",
        tags: ["bits"],
        summary: "List the bits on the rack",
        querystring: PageQuery,
        response: { 200: ref(BitPageSchema) },
      },
    },
    (request, reply) => sendPage(request, reply, request.query, reads.page),
  );

  app.post(
    "/v1/bits",
    {
      config: { scope: "bits:write", operation: "create" },
      schema: {
        operationId: "createBit",
        tags: ["bits"],
        summary: "Put a bit on the rack",
        body: ref(NewBitSchema),
        response: { 201: ref(BitSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, () => {
        const stamp = stampOf(request, now());
        const { record, change } = createBit(newId("bit"), request.body, stamp.at);
        const headers = { Location: `/v1/bits/${record.id}`, ETag: etagOf(record.version) };
        return { stamp, changes: [change], headers, body: record };
      }),
  );

  app.get(
    "/v1/bits/:bitId",
    {
      config: { scope: "bits:read", operation: "read" },
      schema: {
        operationId: "getBit",
        tags: ["bits"],
        summary: "Read a bit",
        params: BitPath,
        response: { 200: ref(BitSchema) },
      },
    },
    async (request, reply) => {
      const record = await found(reads, request.params.bitId);
      reply.header("ETag", etagOf(record.version));
      return record;
    },
  );

  app.patch(
    "/v1/bits/:bitId",
    {
      config: { scope: "bits:write", operation: "change" },
      schema: {
        operationId: "updateBit",
        tags: ["bits"],
        summary: "Change a bit",
        params: BitPath,
        body: ref(BitChangeSchema),
        response: { 200: ref(BitSchema) },
      },
    },
    async (request, reply) => {
      const current = await found(reads, request.params.bitId);
      requireMatch(request, current.version);
      const stamp = stampOf(request, now());
      const { record, change } = changeBit(current, request.body, stamp.at);
      await write({ stamp, changes: [change] });
      reply.header("ETag", etagOf(record.version));
      return record;
    },
  );

  app.delete(
    "/v1/bits/:bitId",
    {
      config: { scope: "bits:write", operation: "remove" },
      schema: {
        operationId: "deleteBit",
        tags: ["bits"],
        summary: "Take a bit off the rack",
        params: BitPath,
        response: { 204: Type.Null({ description: "It is gone; its last state stays in the events." }) },
      },
    },
    async (request, reply) => {
      const current = await found(reads, request.params.bitId);
      requireMatch(request, current.version);
      await write({ stamp: stampOf(request, now()), changes: [removeBit(current)] });
      return reply.code(204).send(null);
    },
  );
}

async function found(reads: BitReads, id: string) {
  const record = await reads.find(id);
  if (record === undefined) throw new Problem("not-found", `There is no bit ${id}.`);
  return record;
}
