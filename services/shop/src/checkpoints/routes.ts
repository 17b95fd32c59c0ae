import Type from "typebox";
import type { AnswerOnce } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { etagOf } from "../http/conditional.ts";
import { PageQuery, sendPage } from "../http/paging.ts";
import { ref } from "../http/reference.ts";
import { stampOf } from "../http/write.ts";
import { Problem } from "../problems/problem.ts";
import type { MakeCheckpoint } from "./make.ts";
import type { CheckpointReads } from "./reads.ts";
import { CheckpointPageSchema, CheckpointSchema } from "./schema.ts";

type Parts = { reads: CheckpointReads; make: MakeCheckpoint; answerOnce: AnswerOnce; now: () => Date };

const CheckpointPath = Type.Object({ checkpointId: Type.String({ description: "Id of a checkpoint." }) });

export function checkpointRoutes(app: App, { reads, make, answerOnce, now }: Parts): void {
  for (const schema of [CheckpointSchema, CheckpointPageSchema]) app.addSchema(schema);

  app.get(
    "/v1/events/checkpoints",
    {
      config: { scope: "events:read", operation: "list" },
      schema: {
        operationId: "listCheckpoints",
        tags: ["checkpoints"],
        summary: "List the signed statements about the history",
        querystring: PageQuery,
        response: { 200: ref(CheckpointPageSchema) },
      },
    },
    (request, reply) => sendPage(request, reply, request.query, reads.page),
  );

  app.post(
    "/v1/events/checkpoints",
    {
      config: { scope: "events:checkpoint", operation: "create" },
      schema: {
        operationId: "createCheckpoint",
        tags: ["checkpoints"],
        summary: "Have the history signed as it stands",
        description:
          "The service does so by itself too: after every 1,000 events, and hourly where there are new ones.",
        response: { 201: ref(CheckpointSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        const stamp = stampOf(request, now());
        const { record, change } = await make("asked", stamp.at);
        const headers = { Location: `/v1/events/checkpoints/${record.id}`, ETag: etagOf(record.version) };
        return { stamp, changes: [change], headers, body: record };
      }),
  );

  app.get(
    "/v1/events/checkpoints/:checkpointId",
    {
      config: { scope: "events:read", operation: "read" },
      schema: {
        operationId: "getCheckpoint",
        tags: ["checkpoints"],
        summary: "Read a signed statement about the history",
        params: CheckpointPath,
        response: { 200: ref(CheckpointSchema) },
      },
    },
    async (request, reply) => {
      const record = await reads.find(request.params.checkpointId);
      if (record === undefined) {
        throw new Problem("not-found", `There is no checkpoint ${request.params.checkpointId}.`);
      }
      reply.header("ETag", etagOf(record.version));
      return record;
    },
  );
}
