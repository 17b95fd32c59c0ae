// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { AnyOptions, CallOptions, Caller, ConditionalOptions, Loose, Query, StreamOptions, WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { Approval, ApprovalDifference, GetApprovalLabelsData, GetApprovalPictureData, GetApprovalPrintoutData, Grounds, ListApprovalsData, NewApproval, Reason, Reissue, SignedSheet, SignedStatus } from "./types.gen.ts";

/** Approved settings: issued, lapsing by themselves, signed. */
export interface ApprovalsResource {
  /**
   * List approved settings; a member sees what is issued in their own courses
   *
   * `GET /v1/approvals`
   */
  list(query?: Loose<NonNullable<ListApprovalsData["query"]>>, options?: CallOptions): Pages<Approval>;

  /**
   * Draft a setting from a stored plan, computed again under the course's policy
   *
   * `POST /v1/approvals`
   */
  create(body: NewApproval, options?: WriteOptions): Answer<Approval>;

  /**
   * Read an approval
   *
   * `GET /v1/approvals/{approvalId}`
   */
  get(approvalId: string, options: ConditionalOptions): Answer<Approval | NotModified>;
  /**
   * Read an approval
   *
   * `GET /v1/approvals/{approvalId}`
   */
  get(approvalId: string, options?: CallOptions): Answer<Approval>;

  /**
   * Issue a draft: from now on a class may rely on it, until something it rests on changes
   *
   * Takes the key of a person. If the course asks for two persons, or did when it was drafted, another person than the one who drafted it issues it.
   *
   * `POST /v1/approvals/{approvalId}/issue`
   */
  issue(approvalId: string, options?: WriteOptions): Answer<Approval>;

  /**
   * Issue a setting again as computed now, after its difference was seen
   *
   * Takes the key of a person. If two persons are needed, the answer is a draft, which another person issues; until then the old one stays what it is.
   *
   * `POST /v1/approvals/{approvalId}/reissue`
   */
  reissue(approvalId: string, body: Reissue, options?: WriteOptions): Answer<Approval>;

  /**
   * End a setting at once
   *
   * `POST /v1/approvals/{approvalId}/withdraw`
   */
  withdraw(approvalId: string, body: Reason, options?: WriteOptions): Answer<Approval>;

  /**
   * The signed sheet of a setting in force, to take to the machine and to check anywhere
   *
   * `GET /v1/approvals/{approvalId}/sheet`
   */
  sheet(approvalId: string, options?: CallOptions): Answer<SignedSheet>;

  /**
   * The full copy of what a setting was made from, and of the result
   *
   * `GET /v1/approvals/{approvalId}/grounds`
   */
  grounds(approvalId: string, options?: CallOptions): Answer<Grounds>;

  /**
   * A setting as it is and as it would be computed now
   *
   * `GET /v1/approvals/{approvalId}/difference`
   */
  difference(approvalId: string, options?: CallOptions): Answer<ApprovalDifference>;

  /**
   * The signed list of settings whose sheets must no longer be believed
   *
   * `GET /v1/approvals/status`
   */
  status(options?: CallOptions): Answer<SignedStatus>;

  /**
   * A label to print for a setting, with a QR code that leads to its page and its check
   *
   * `GET /v1/approvals/{approvalId}/label`
   */
  label(approvalId: string, options: CallOptions & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * A label to print for a setting, with a QR code that leads to its page and its check
   *
   * `GET /v1/approvals/{approvalId}/label`
   */
  label(approvalId: string, options?: CallOptions): Answer<string>;

  /**
   * Pages to print with the labels of some settings
   *
   * `GET /v1/approvals/labels`
   */
  labels(options: CallOptions & { readonly query?: Loose<NonNullable<GetApprovalLabelsData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * Pages to print with the labels of some settings
   *
   * `GET /v1/approvals/labels`
   */
  labels(options?: CallOptions & { readonly query?: Loose<NonNullable<GetApprovalLabelsData["query"]>> | undefined }): Answer<Blob>;

  /**
   * An approved setting at the machine, as long as it is in force
   *
   * It names the setting it shows. As SVG it holds a signed statement (a compact JWS in `metadata`): of which setting and result it is, until when, and the SHA-256 of the picture without the statement.
   *
   * `GET /v1/approvals/{approvalId}/picture`
   */
  picture(approvalId: string, options: CallOptions & { readonly query?: Loose<NonNullable<GetApprovalPictureData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * An approved setting at the machine, as long as it is in force
   *
   * It names the setting it shows. As SVG it holds a signed statement (a compact JWS in `metadata`): of which setting and result it is, until when, and the SHA-256 of the picture without the statement.
   *
   * `GET /v1/approvals/{approvalId}/picture`
   */
  picture(approvalId: string, options?: CallOptions & { readonly query?: Loose<NonNullable<GetApprovalPictureData["query"]>> | undefined }): Answer<Blob>;

  /**
   * An approved setting on paper, with a code that checks it, as long as it is in force
   *
   * `GET /v1/approvals/{approvalId}/printout`
   */
  printout(approvalId: string, options: CallOptions & { readonly query?: Loose<NonNullable<GetApprovalPrintoutData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * An approved setting on paper, with a code that checks it, as long as it is in force
   *
   * `GET /v1/approvals/{approvalId}/printout`
   */
  printout(approvalId: string, options?: CallOptions & { readonly query?: Loose<NonNullable<GetApprovalPrintoutData["query"]>> | undefined }): Answer<Blob>;
}

export function approvalsOf(caller: Caller): ApprovalsResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/approvals", query }, options),
    create: (body, options) =>
      caller.send({ method: "POST", path: "/v1/approvals", body }, options),
    get: (approvalId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/approvals/{}", ids: [approvalId] }, options),
    issue: (approvalId, options) =>
      caller.send({ method: "POST", path: "/v1/approvals/{}/issue", ids: [approvalId] }, options),
    reissue: (approvalId, body, options) =>
      caller.send({ method: "POST", path: "/v1/approvals/{}/reissue", ids: [approvalId], body }, options),
    withdraw: (approvalId, body, options) =>
      caller.send({ method: "POST", path: "/v1/approvals/{}/withdraw", ids: [approvalId], body }, options),
    sheet: (approvalId, options) =>
      caller.send({ path: "/v1/approvals/{}/sheet", ids: [approvalId] }, options),
    grounds: (approvalId, options) =>
      caller.send({ path: "/v1/approvals/{}/grounds", ids: [approvalId] }, options),
    difference: (approvalId, options) =>
      caller.send({ path: "/v1/approvals/{}/difference", ids: [approvalId] }, options),
    status: (options) =>
      caller.send({ path: "/v1/approvals/status" }, options),
    label: (approvalId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/approvals/{}/label", ids: [approvalId], answers: ["image/svg+xml"] }, options),
    labels: (options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ path: "/v1/approvals/labels", answers: ["application/pdf", "text/html"] }, options),
    picture: (approvalId: string, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ path: "/v1/approvals/{}/picture", ids: [approvalId], answers: ["image/svg+xml", "image/png"] }, options),
    printout: (approvalId: string, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ path: "/v1/approvals/{}/printout", ids: [approvalId], answers: ["application/pdf", "text/html", "text/plain"] }, options),
  };
}
