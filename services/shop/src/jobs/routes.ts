import Type from "typebox";
import type { Admit } from "../http/admission.ts";
import type { App } from "../http/app-type.ts";
import { askRoute } from "../http/ask-routes.ts";
import { findVisible, listShownRoute, readRoute, requireFound } from "../http/read-routes.ts";
import { ref } from "../http/reference.ts";
import { askedOf, type Doors, schemaOf } from "../http/routes.ts";
import { turnsOf } from "../http/turns.ts";
import { JobChangesSchema } from "./act-schema.ts";
import { JobState } from "./codes.ts";
import { computeJob } from "./compute.ts";
import { jobAsCsv } from "./csv.ts";
import { requireDaysInOrder } from "./decide.ts";
import { jobKind } from "./kind.ts";
import { jobs } from "./reads.ts";
import { JOB_SCHEMAS, JobPageSchema, type NewJob, NewJobSchema } from "./schema.ts";
import { jobChanges, summaryOf } from "./show.ts";
import { JobWorkSchema } from "./work-schema.ts";
import { BODY_LIMIT_BYTES, jobWriteRoutes } from "./write-routes.ts";

const READ = { scope: "jobs:read", tag: "jobs", of: jobs } as const;

const CSV_TYPE = "text/csv";

/** Register after plans and approvals: their schemas are part of the answers. */
export function jobRoutes(app: App, doors: Doors, admit: Admit): void {
  for (const schema of JOB_SCHEMAS) app.addSchema(schema);

  listShownRoute(
    app,
    doors,
    {
      ...READ,
      path: "/v1/jobs",
      operationId: "listJobs",
      summary: "List jobs in short; a member sees their own and those of their courses",
      page: JobPageSchema,
      filters: {
        state: Type.Optional(
          Type.Enum(JobState.schema.enum, { type: "string", description: "Jobs that are so far." }),
        ),
        personId: "Made by this person.",
        courseId: "Of this course.",
      },
    },
    summaryOf,
  );

  readRoute(app, doors, { ...READ, path: "/v1/jobs/:jobId", operationId: "getJob", summary: "Read a job" });

  askRoute(
    app,
    doors,
    {
      scope: "jobs:read",
      tag: "jobs",
      path: "/v1/jobs/:jobId/changes",
      operationId: "getJobChanges",
      summary: "What a job rests on that has changed since it was computed",
      answer: JobChangesSchema,
    },
    function* ({ params: { jobId }, request, at }) {
      return yield* jobChanges(
        requireFound(jobKind, jobId, yield* findVisible(jobs)(jobId, { request })),
        at,
      );
    },
  );

  previewRoute(app, doors, admit);
  csvRoute(app, doors);
  jobWriteRoutes(app, doors, admit);
}

function previewRoute(app: App, doors: Doors, admit: Admit): void {
  const definition = {
    scope: "plans:compute",
    tag: "jobs",
    path: "/v1/jobs/preview",
    operationId: "previewJob",
    summary: "Compute a job and keep nothing",
  } as const;
  app.post(
    definition.path,
    {
      config: { scope: definition.scope, operation: "act" },
      bodyLimit: BODY_LIMIT_BYTES,
      schema: schemaOf(definition, { body: ref(NewJobSchema), response: { 200: ref(JobWorkSchema) } }),
    },
    (request, reply) =>
      admit(request, () => {
        const at = doors.now().toISOString();
        const { body } = askedOf<typeof definition.path, NewJob, undefined>(request, at);
        requireDaysInOrder(body);
        return computeJob(body, { answer: doors.answer, turns: turnsOf(reply), at });
      }),
  );
}

function csvRoute(app: App, doors: Doors): void {
  const definition = {
    scope: "jobs:read",
    tag: "jobs",
    path: "/v1/jobs/:jobId/export",
    operationId: "exportJob",
    summary: "The day's list of a job as CSV: one row for each part at each set-up, in the order of work",
  } as const;
  app.get(
    definition.path,
    {
      config: { scope: definition.scope, operation: "act" },
      schema: schemaOf(definition, {
        response: {
          200: { description: "The day's list.", content: { [CSV_TYPE]: { schema: { type: "string" } } } },
        },
      }),
    },
    async (request, reply) => {
      const at = doors.now().toISOString();
      const { params } = askedOf<typeof definition.path, undefined, undefined>(request, at);
      const job = requireFound(
        jobKind,
        params.jobId,
        await doors.answer(findVisible(jobs)(params.jobId, { request })),
      );
      return reply
        .type(`${CSV_TYPE}; charset=utf-8`)
        .header("Content-Disposition", `attachment; filename="${job.id}.csv"`)
        .send(jobAsCsv(job));
    },
  );
}
