// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller, WriteOptions } from "../operation.ts";
import type {
  CorrectPlanData,
  CorrectPlanResponse,
  CreatePlanData,
  CreatePlanResponse,
  GetPlanResponse,
  ListPlansData,
  ListPlansResponse,
  PreviewCorrectionData,
  PreviewCorrectionResponse,
  PreviewManyPlansData,
  PreviewManyPlansResponse,
  PreviewPlanData,
  PreviewPlanResponse,
  TabulatePlansData,
  TabulatePlansResponse,
} from "./types.gen.ts";

export function plansOf(caller: Caller) {
  return {
    /** Compute up to 1,000 plans and keep nothing */
    previewMany: (body: PreviewManyPlansData["body"], options?: CallOptions & { readonly query?: PreviewManyPlansData["query"] }) =>
      caller.send<PreviewManyPlansResponse>(
        { method: "POST", path: "/v1/plans/preview-batch", query: options?.query, body },
        options,
      ),

    /** Ceiling, mark and verdict of every bit in every router in every wood */
    tabulate: (body: TabulatePlansData["body"], options?: CallOptions) =>
      caller.send<TabulatePlansResponse>(
        { method: "POST", path: "/v1/plans/shop-table", body },
        options,
      ),

    /** Compute a plan and keep nothing */
    preview: (body: PreviewPlanData["body"], options?: CallOptions & { readonly query?: PreviewPlanData["query"] }) =>
      caller.send<PreviewPlanResponse>(
        { method: "POST", path: "/v1/plans/preview", query: options?.query, body },
        options,
      ),

    /** Correct the setting of a plan by what was measured on its test piece, and keep nothing */
    previewCorrection: (body: PreviewCorrectionData["body"], options?: CallOptions & { readonly query?: PreviewCorrectionData["query"] }) =>
      caller.send<PreviewCorrectionResponse>(
        { method: "POST", path: "/v1/plans/preview-correction", query: options?.query, body },
        options,
      ),

    /** List the stored plans in short */
    list: (query?: ListPlansData["query"], options?: CallOptions) =>
      caller.list<ListPlansResponse["data"][number]>(
        { method: "GET", path: "/v1/plans", query },
        "cursor", options,
      ),

    /** Compute a plan and keep it */
    create: (body: CreatePlanData["body"], options?: WriteOptions & { readonly query?: CreatePlanData["query"] }) =>
      caller.send<CreatePlanResponse>(
        { method: "POST", path: "/v1/plans", query: options?.query, body, isWrite: true },
        options,
      ),

    /** Correct the setting of a stored plan by what was measured on its test piece */
    correct: (planId: string, body: CorrectPlanData["body"], options?: WriteOptions) =>
      caller.send<CorrectPlanResponse>(
        { method: "POST", path: "/v1/plans/{planId}/corrections", pathParameters: { planId }, body, isWrite: true },
        options,
      ),

    /** Read a stored plan */
    get: (planId: string, options?: CallOptions) =>
      caller.send<GetPlanResponse>(
        { method: "GET", path: "/v1/plans/{planId}", pathParameters: { planId } },
        options,
      ),
  };
}
