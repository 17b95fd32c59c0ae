// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { AnyOptions, CallOptions, Caller, ConditionalOptions, Loose, Query, StreamOptions, WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { Asking, FieldOf, PartsOf, Whole } from "../parts.ts";
import type { NotModified } from "../read.ts";
import type { CorrectionRequest, CreatePlanData, DrawPlanData, GetPlanData, GetPlanPictureData, GetPlanPrintoutData, ListPlansData, NewPlan, Plan, PlanBatch, PlanBatchAnswer, PlanCorrection, PlanRequest, PlanSummary, PreviewCorrectionData, PreviewManyPlansData, PreviewPlanData, PrintPlanData, ShopTable, ShopTableRequest, StoredPlan, TestPiece } from "./types.gen.ts";

/** Plans for cuts: speed, dial mark, passes and order of work, every limit explained. */
export interface PlansResource {
  /**
   * Compute up to 1,000 plans and keep nothing
   *
   * `POST /v1/plans/preview-batch`
   */
  previewMany<const Field extends FieldOf<NonNullable<PreviewManyPlansData["query"]>>>(body: PlanBatch, options: CallOptions & { readonly query: Asking<NonNullable<PreviewManyPlansData["query"]>, Field> }): Answer<PartsOf<PlanBatchAnswer, Field>>;
  /**
   * Compute up to 1,000 plans and keep nothing
   *
   * `POST /v1/plans/preview-batch`
   */
  previewMany(body: PlanBatch, options?: CallOptions & { readonly query?: Whole<NonNullable<PreviewManyPlansData["query"]>> | undefined }): Answer<PlanBatchAnswer>;

  /**
   * Ceiling, mark and verdict of every bit in every router in every wood
   *
   * `POST /v1/plans/shop-table`
   */
  tabulate(body: ShopTableRequest, options?: CallOptions): Answer<ShopTable>;

  /**
   * Compute a plan and keep nothing
   *
   * `POST /v1/plans/preview`
   */
  preview<const Field extends FieldOf<NonNullable<PreviewPlanData["query"]>>>(body: PlanRequest, options: CallOptions & { readonly query: Asking<NonNullable<PreviewPlanData["query"]>, Field> }): Answer<PartsOf<Plan, Field>>;
  /**
   * Compute a plan and keep nothing
   *
   * `POST /v1/plans/preview`
   */
  preview(body: PlanRequest, options?: CallOptions & { readonly query?: Whole<NonNullable<PreviewPlanData["query"]>> | undefined }): Answer<Plan>;

  /**
   * Correct the setting of a plan by what was measured on its test piece, and keep nothing
   *
   * `POST /v1/plans/preview-correction`
   */
  previewCorrection(body: CorrectionRequest, options?: CallOptions & { readonly query?: Loose<NonNullable<PreviewCorrectionData["query"]>> | undefined }): Answer<PlanCorrection>;

  /**
   * List the stored plans in short
   *
   * `GET /v1/plans`
   */
  list(query?: Loose<NonNullable<ListPlansData["query"]>>, options?: CallOptions): Pages<PlanSummary>;

  /**
   * Compute a plan and keep it
   *
   * `POST /v1/plans`
   */
  create(body: NewPlan, options?: WriteOptions & { readonly query?: Loose<NonNullable<CreatePlanData["query"]>> | undefined }): Answer<StoredPlan>;

  /**
   * Correct the setting of a stored plan by what was measured on its test piece
   *
   * `POST /v1/plans/{planId}/corrections`
   */
  correct(planId: string, body: TestPiece, options?: WriteOptions): Answer<StoredPlan>;

  /**
   * Read a stored plan
   *
   * `GET /v1/plans/{planId}`
   */
  get<const Field extends FieldOf<NonNullable<GetPlanData["query"]>>>(planId: string, options: CallOptions & { readonly query: Asking<NonNullable<GetPlanData["query"]>, Field> }): Answer<PartsOf<StoredPlan, Field>>;
  /**
   * Read a stored plan
   *
   * `GET /v1/plans/{planId}`
   */
  get(planId: string, options: ConditionalOptions & { readonly query?: Whole<NonNullable<GetPlanData["query"]>> | undefined }): Answer<StoredPlan | NotModified>;
  /**
   * Read a stored plan
   *
   * `GET /v1/plans/{planId}`
   */
  get(planId: string, options?: CallOptions & { readonly query?: Whole<NonNullable<GetPlanData["query"]>> | undefined }): Answer<StoredPlan>;

  /**
   * A stored plan at the machine, or what limits it; refused once it would be another plan
   *
   * `GET /v1/plans/{planId}/picture`
   */
  picture(planId: string, options: CallOptions & { readonly query?: Loose<NonNullable<GetPlanPictureData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * A stored plan at the machine, or what limits it; refused once it would be another plan
   *
   * `GET /v1/plans/{planId}/picture`
   */
  picture(planId: string, options?: CallOptions & { readonly query?: Loose<NonNullable<GetPlanPictureData["query"]>> | undefined }): Answer<Blob>;

  /**
   * The same of a plan that is computed and not kept
   *
   * `POST /v1/plans/picture`
   */
  draw(body: PlanRequest, options: CallOptions & { readonly query?: Loose<NonNullable<DrawPlanData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * The same of a plan that is computed and not kept
   *
   * `POST /v1/plans/picture`
   */
  draw(body: PlanRequest, options?: CallOptions & { readonly query?: Loose<NonNullable<DrawPlanData["query"]>> | undefined }): Answer<Blob>;

  /**
   * A stored plan on paper, to lie at the machine; refused once it would be another plan
   *
   * `GET /v1/plans/{planId}/printout`
   */
  printout(planId: string, options: CallOptions & { readonly query?: Loose<NonNullable<GetPlanPrintoutData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * A stored plan on paper, to lie at the machine; refused once it would be another plan
   *
   * `GET /v1/plans/{planId}/printout`
   */
  printout(planId: string, options?: CallOptions & { readonly query?: Loose<NonNullable<GetPlanPrintoutData["query"]>> | undefined }): Answer<Blob>;

  /**
   * The same of a plan that is computed and not kept
   *
   * `POST /v1/plans/printout`
   */
  print(body: PlanRequest, options: CallOptions & { readonly query?: Loose<NonNullable<PrintPlanData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * The same of a plan that is computed and not kept
   *
   * `POST /v1/plans/printout`
   */
  print(body: PlanRequest, options?: CallOptions & { readonly query?: Loose<NonNullable<PrintPlanData["query"]>> | undefined }): Answer<Blob>;
}

export function plansOf(caller: Caller): PlansResource {
  return {
    previewMany: (body: PlanBatch, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ method: "POST", path: "/v1/plans/preview-batch", body, isQuestion: true }, options),
    tabulate: (body, options) =>
      caller.send({ method: "POST", path: "/v1/plans/shop-table", body, isQuestion: true }, options),
    preview: (body: PlanRequest, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ method: "POST", path: "/v1/plans/preview", body, isQuestion: true }, options),
    previewCorrection: (body, options) =>
      caller.send({ method: "POST", path: "/v1/plans/preview-correction", body, isQuestion: true }, options),
    list: (query, options) =>
      caller.list({ path: "/v1/plans", query }, options),
    create: (body, options) =>
      caller.send({ method: "POST", path: "/v1/plans", body }, options),
    correct: (planId, body, options) =>
      caller.send({ method: "POST", path: "/v1/plans/{}/corrections", ids: [planId], body }, options),
    get: (planId: string, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ path: "/v1/plans/{}", ids: [planId] }, options),
    picture: (planId: string, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ path: "/v1/plans/{}/picture", ids: [planId], answers: ["image/svg+xml", "image/png"] }, options),
    draw: (body: PlanRequest, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ method: "POST", path: "/v1/plans/picture", body, isQuestion: true, answers: ["image/svg+xml", "image/png"] }, options),
    printout: (planId: string, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ path: "/v1/plans/{}/printout", ids: [planId], answers: ["application/pdf", "text/html", "text/plain"] }, options),
    print: (body: PlanRequest, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ method: "POST", path: "/v1/plans/printout", body, isQuestion: true, answers: ["application/pdf", "text/html", "text/plain"] }, options),
  };
}
