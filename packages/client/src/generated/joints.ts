// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { AnyOptions, CallOptions, Caller, Loose, Query, StreamOptions } from "../operation.ts";
import type { DrawJointData, JointRequest, SolvedJoint, TemplateFit, TemplateRequest } from "./types.gen.ts";

/** Joints of two halves: settings, how they close, and templates. */
export interface JointsResource {
  /**
   * Set both halves of a joint for the fit wanted, and lay them on each other as the bits measure now
   *
   * `POST /v1/joints/solve`
   */
  solve(body: JointRequest, options?: CallOptions): Answer<SolvedJoint>;

  /**
   * What a bit cuts along a template: offset, corners and inlay pairs
   *
   * `POST /v1/joints/template`
   */
  fitTemplate(body: TemplateRequest, options?: CallOptions): Answer<TemplateFit>;

  /**
   * Both halves of a joint closed, as the bits measure now, with the widest gap marked
   *
   * `POST /v1/joints/picture`
   */
  draw(body: JointRequest, options: CallOptions & { readonly query?: Loose<NonNullable<DrawJointData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * Both halves of a joint closed, as the bits measure now, with the widest gap marked
   *
   * `POST /v1/joints/picture`
   */
  draw(body: JointRequest, options?: CallOptions & { readonly query?: Loose<NonNullable<DrawJointData["query"]>> | undefined }): Answer<Blob>;
}

export function jointsOf(caller: Caller): JointsResource {
  return {
    solve: (body, options) =>
      caller.send({ method: "POST", path: "/v1/joints/solve", body, isQuestion: true }, options),
    fitTemplate: (body, options) =>
      caller.send({ method: "POST", path: "/v1/joints/template", body, isQuestion: true }, options),
    draw: (body: JointRequest, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ method: "POST", path: "/v1/joints/picture", body, isQuestion: true, answers: ["image/svg+xml", "image/png"] }, options),
  };
}
