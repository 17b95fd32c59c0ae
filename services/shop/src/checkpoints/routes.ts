import type { App } from "../http/app-type.ts";
import { etagOf } from "../http/conditional.ts";
import { listRecordsRoute, readRoute } from "../http/read-routes.ts";
import { ref } from "../http/reference.ts";
import type { Doors } from "../http/routes.ts";
import { stampOf } from "../http/write.ts";
import { checkpointKind } from "./kind.ts";
import type { MakeCheckpoint } from "./make.ts";
import { checkpoints } from "./reads.ts";
import { CheckpointPageSchema, CheckpointSchema } from "./schema.ts";

const READ = { scope: "events:read", tag: "checkpoints", of: checkpoints } as const;

export function checkpointRoutes(app: App, doors: Doors, make: MakeCheckpoint): void {
  for (const schema of [CheckpointSchema, CheckpointPageSchema]) app.addSchema(schema);

  listRecordsRoute(app, doors, {
    ...READ,
    path: "/v1/events/checkpoints",
    operationId: "listCheckpoints",
    summary: "List the signed statements about the history",
    page: CheckpointPageSchema,
  });

  app.post(
    "/v1/events/checkpoints",
    {
      config: { scope: "events:checkpoint", operation: "create" },
      schema: {
        operationId: "createCheckpoint",
        tags: ["checkpoints"],
        summary: "Have the history signed as it stands",
        description:
          "The service does so by itself too: after every 1,000 events, and hourly when there are new ones.",
        response: { 201: ref(CheckpointSchema) },
      },
    },
    (request, reply) =>
      doors.answerOnce(request, reply, async () => {
        const stamp = stampOf(request, doors.now());
        const { record, changes, expects = [] } = await make("asked", stamp.at);
        const headers = { Location: `${checkpointKind.path}/${record.id}`, ETag: etagOf(record.version) };
        return { stamp, changes, expects, status: 201, headers, body: record };
      }),
  );

  readRoute(app, doors, {
    ...READ,
    path: "/v1/events/checkpoints/:checkpointId",
    operationId: "getCheckpoint",
    summary: "Read a signed statement about the history",
  });
}
