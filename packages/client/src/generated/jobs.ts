// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import { changeOptions, type AnyOptions, type CallOptions, type Caller, type ChangeOptions, type ConditionalOptions, type Loose, type Query, type RecordVersion, type StreamOptions, type WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { DrawJobData, GetJobPictureData, GetJobPrintoutData, Job, JobApprovals, JobApprovalsMade, JobChange, JobChanges, JobEnd, JobSummary, JobWork, ListJobsData, NewJob, SetupMade } from "./types.gen.ts";

/** From a list of parts to the bits, set-ups and hours of a day's work. */
export interface JobsResource {
  /**
   * List jobs in short; a member sees their own and those of their courses
   *
   * `GET /v1/jobs`
   */
  list(query?: Loose<NonNullable<ListJobsData["query"]>>, options?: CallOptions): Pages<JobSummary>;

  /**
   * Compute a job from its list of parts, and keep it as a draft
   *
   * `POST /v1/jobs`
   */
  create(body: NewJob, options?: WriteOptions): Answer<Job>;

  /**
   * Read a job
   *
   * `GET /v1/jobs/{jobId}`
   */
  get(jobId: string, options: ConditionalOptions): Answer<Job | NotModified>;
  /**
   * Read a job
   *
   * `GET /v1/jobs/{jobId}`
   */
  get(jobId: string, options?: CallOptions): Answer<Job>;

  /**
   * Change a draft and compute it again
   *
   * `PATCH /v1/jobs/{jobId}`
   */
  update(jobId: string, body: JobChange, version: RecordVersion | ChangeOptions): Answer<Job>;

  /**
   * What a job rests on that has changed since it was computed
   *
   * `GET /v1/jobs/{jobId}/changes`
   */
  changes(jobId: string, options?: CallOptions): Answer<JobChanges>;

  /**
   * Compute a job and keep nothing
   *
   * `POST /v1/jobs/preview`
   */
  preview(body: NewJob, options?: CallOptions): Answer<JobWork>;

  /**
   * The day's list of a job as CSV: one row for each part at each set-up, in the order of work
   *
   * `GET /v1/jobs/{jobId}/export`
   */
  export(jobId: string, options: CallOptions & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * The day's list of a job as CSV: one row for each part at each set-up, in the order of work
   *
   * `GET /v1/jobs/{jobId}/export`
   */
  export(jobId: string, options?: CallOptions): Answer<string>;

  /**
   * Compute a job again from how things are now; what was made stays made
   *
   * `POST /v1/jobs/{jobId}/compute`
   */
  compute(jobId: string, options?: WriteOptions): Answer<Job>;

  /**
   * Settle a draft: its bits are kept for its days
   *
   * `POST /v1/jobs/{jobId}/ready`
   */
  ready(jobId: string, options?: WriteOptions): Answer<Job>;

  /**
   * Make a job that is ready a draft again: its bits are free
   *
   * `POST /v1/jobs/{jobId}/reopen`
   */
  reopen(jobId: string, options?: WriteOptions): Answer<Job>;

  /**
   * End a job as done or dropped: its bits are free
   *
   * `POST /v1/jobs/{jobId}/end`
   */
  end(jobId: string, body: JobEnd, options?: WriteOptions): Answer<Job>;

  /**
   * Log a set-up that was made; what came out changes the passes or the speed of what is left
   *
   * `POST /v1/jobs/{jobId}/set-ups-made`
   */
  finishSetup(jobId: string, body: SetupMade, options?: WriteOptions): Answer<Job>;

  /**
   * Draft approved settings for a course from every set-up of a job
   *
   * `POST /v1/jobs/{jobId}/approvals`
   */
  draftApprovals(jobId: string, body: JobApprovals, options?: WriteOptions): Answer<JobApprovalsMade>;

  /**
   * A job's day: its set-ups in order, with bit, mark, height, parts and minutes
   *
   * `GET /v1/jobs/{jobId}/picture`
   */
  picture(jobId: string, options: CallOptions & { readonly query?: Loose<NonNullable<GetJobPictureData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * A job's day: its set-ups in order, with bit, mark, height, parts and minutes
   *
   * `GET /v1/jobs/{jobId}/picture`
   */
  picture(jobId: string, options?: CallOptions & { readonly query?: Loose<NonNullable<GetJobPictureData["query"]>> | undefined }): Answer<Blob>;

  /**
   * The same of a job that is computed and not kept
   *
   * `POST /v1/jobs/picture`
   */
  draw(body: NewJob, options: CallOptions & { readonly query?: Loose<NonNullable<DrawJobData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * The same of a job that is computed and not kept
   *
   * `POST /v1/jobs/picture`
   */
  draw(body: NewJob, options?: CallOptions & { readonly query?: Loose<NonNullable<DrawJobData["query"]>> | undefined }): Answer<Blob>;

  /**
   * A job's day on paper: what to fetch and its set-ups; refused once it would be computed otherwise
   *
   * `GET /v1/jobs/{jobId}/printout`
   */
  printout(jobId: string, options: CallOptions & { readonly query?: Loose<NonNullable<GetJobPrintoutData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * A job's day on paper: what to fetch and its set-ups; refused once it would be computed otherwise
   *
   * `GET /v1/jobs/{jobId}/printout`
   */
  printout(jobId: string, options?: CallOptions & { readonly query?: Loose<NonNullable<GetJobPrintoutData["query"]>> | undefined }): Answer<Blob>;
}

export function jobsOf(caller: Caller): JobsResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/jobs", query }, options),
    create: (body, options) =>
      caller.send({ method: "POST", path: "/v1/jobs", body }, options),
    get: (jobId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/jobs/{}", ids: [jobId] }, options),
    update: (jobId, body, version) =>
      caller.send({ method: "PATCH", path: "/v1/jobs/{}", ids: [jobId], body }, changeOptions(version)),
    changes: (jobId, options) =>
      caller.send({ path: "/v1/jobs/{}/changes", ids: [jobId] }, options),
    preview: (body, options) =>
      caller.send({ method: "POST", path: "/v1/jobs/preview", body, isQuestion: true }, options),
    export: (jobId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/jobs/{}/export", ids: [jobId], answers: ["text/csv"] }, options),
    compute: (jobId, options) =>
      caller.send({ method: "POST", path: "/v1/jobs/{}/compute", ids: [jobId] }, options),
    ready: (jobId, options) =>
      caller.send({ method: "POST", path: "/v1/jobs/{}/ready", ids: [jobId] }, options),
    reopen: (jobId, options) =>
      caller.send({ method: "POST", path: "/v1/jobs/{}/reopen", ids: [jobId] }, options),
    end: (jobId, body, options) =>
      caller.send({ method: "POST", path: "/v1/jobs/{}/end", ids: [jobId], body }, options),
    finishSetup: (jobId, body, options) =>
      caller.send({ method: "POST", path: "/v1/jobs/{}/set-ups-made", ids: [jobId], body }, options),
    draftApprovals: (jobId, body, options) =>
      caller.send({ method: "POST", path: "/v1/jobs/{}/approvals", ids: [jobId], body }, options),
    picture: (jobId: string, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ path: "/v1/jobs/{}/picture", ids: [jobId], answers: ["image/svg+xml", "image/png"] }, options),
    draw: (body: NewJob, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ method: "POST", path: "/v1/jobs/picture", body, isQuestion: true, answers: ["image/svg+xml", "image/png"] }, options),
    printout: (jobId: string, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ path: "/v1/jobs/{}/printout", ids: [jobId], answers: ["application/pdf", "text/html", "text/plain"] }, options),
  };
}
