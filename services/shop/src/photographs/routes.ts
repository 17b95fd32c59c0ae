import Type from "typebox";
import { BitPath } from "../bits/path.ts";
import type { BitReads } from "../bits/reads.ts";
import type { AnswerOnce } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { etagOf, requireMatch } from "../http/conditional.ts";
import { idFilter, listRoute, readRoute, requireFound } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { stampOf, type Write } from "../http/write.ts";
import { callerOf } from "../keys/caller.ts";
import { newId } from "../store/id.ts";
import { addPhotograph, MOST_OF_A_BIT, removePhotograph } from "./decide.ts";
import type { PhotographReads } from "./reads.ts";
import {
  MOST_BYTES,
  NewPhotographSchema,
  PHOTOGRAPH_SCHEMAS,
  PhotographContentSchema,
  PhotographPageSchema,
  PhotographSchema,
  shownPhotograph,
} from "./schema.ts";

type Parts = {
  readonly reads: PhotographReads;
  readonly bits: BitReads;
  readonly write: Write;
  readonly answerOnce: AnswerOnce;
  readonly now: () => Date;
};

/** The image in base64, and what stands around it. */
const BODY_LIMIT_BYTES = Math.ceil((MOST_BYTES * 4) / 3) + 4096;

const PhotographPath = Type.Object({ photographId: Type.String({ description: "Id of a photograph." }) });

export function photographRoutes(app: App, { reads, bits, write, answerOnce, now }: Parts): void {
  for (const schema of PHOTOGRAPH_SCHEMAS) app.addSchema(schema);
  const common = { scope: "bits:read", tag: "photographs" } as const;

  listRoute(
    app,
    {
      ...common,
      path: "/v1/photographs",
      operationId: "listPhotographs",
      summary: "List photographs of bits, without their bytes",
      page: PhotographPageSchema,
      filters: { bitId: idFilter("Of this bit.") },
    },
    (afterId, most, { bitId }) => reads.shown(afterId, most, bitId),
  );

  readRoute(
    app,
    {
      ...common,
      path: "/v1/photographs/:photographId",
      operationId: "getPhotograph",
      summary: "Read about a photograph",
      record: PhotographSchema,
      noun: "photograph",
      parameter: "photographId",
    },
    reads.find,
    shownPhotograph,
  );

  app.get(
    "/v1/photographs/:photographId/content",
    {
      config: { scope: "bits:read", operation: "act" },
      schema: {
        operationId: "getPhotographContent",
        tags: ["photographs"],
        summary: "Read a photograph itself",
        params: PhotographPath,
        response: { 200: ref(PhotographContentSchema) },
      },
    },
    async (request) => {
      const { photographId } = request.params;
      const { mediaType, bytes } = requireFound("photograph", photographId, await reads.find(photographId));
      return { mediaType, base64: bytes.toString("base64") };
    },
  );

  app.post(
    "/v1/bits/:bitId/photographs",
    {
      config: { scope: "bits:write", operation: "create" },
      bodyLimit: BODY_LIMIT_BYTES,
      schema: {
        operationId: "createPhotograph",
        tags: ["photographs"],
        summary: `Add a photograph of a bit, at most ${MOST_OF_A_BIT} of each`,
        params: BitPath,
        body: ref(NewPhotographSchema),
        response: { 201: ref(PhotographSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        const { bitId } = request.params;
        requireFound("bit", bitId, await bits.find(bitId));
        const kept = await reads.countOf(bitId);
        const stamp = stampOf(request, now());
        const { personId } = callerOf(request);
        const id = newId("photograph");
        const { record, change } = addPhotograph(id, bitId, request.body, kept, personId, stamp.at);
        const headers = { Location: `/v1/photographs/${record.id}`, ETag: etagOf(record.version) };
        return { stamp, changes: [change], headers, body: shownPhotograph(record) };
      }),
  );

  app.delete(
    "/v1/photographs/:photographId",
    {
      config: { scope: "bits:write", operation: "remove" },
      schema: {
        operationId: "deletePhotograph",
        tags: ["photographs"],
        summary: "Remove a photograph",
        params: PhotographPath,
        response: { 204: Type.Null({ description: "It is gone." }) },
      },
    },
    async (request, reply) => {
      const { photographId } = request.params;
      const current = requireFound("photograph", photographId, await reads.find(photographId));
      requireMatch(request, current.version);
      await write({ stamp: stampOf(request, now()), changes: [removePhotograph(current)] });
      return reply.code(204).send(null);
    },
  );
}
