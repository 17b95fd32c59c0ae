// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller, WriteOptions } from "../operation.ts";
import type {
  CreateApprovalData,
  CreateApprovalResponse,
  GetApprovalDifferenceResponse,
  GetApprovalGroundsResponse,
  GetApprovalLabelResponse,
  GetApprovalResponse,
  GetApprovalSheetResponse,
  GetApprovalStatusResponse,
  IssueApprovalResponse,
  ListApprovalsData,
  ListApprovalsResponse,
  ReissueApprovalData,
  ReissueApprovalResponse,
  WithdrawApprovalData,
  WithdrawApprovalResponse,
} from "./types.gen.ts";

export function approvalsOf(caller: Caller) {
  return {
    /** List approved settings; a member sees what is issued in their own courses */
    list: (query?: ListApprovalsData["query"], options?: CallOptions) =>
      caller.list<ListApprovalsResponse["data"][number]>(
        { method: "GET", path: "/v1/approvals", query },
        "cursor", options,
      ),

    /** Draft a setting from a stored plan, computed again under the course's policy */
    create: (body: CreateApprovalData["body"], options?: WriteOptions) =>
      caller.send<CreateApprovalResponse>(
        { method: "POST", path: "/v1/approvals", body, isWrite: true },
        options,
      ),

    /** Read an approval */
    get: (approvalId: string, options?: CallOptions) =>
      caller.send<GetApprovalResponse>(
        { method: "GET", path: "/v1/approvals/{approvalId}", pathParameters: { approvalId } },
        options,
      ),

    /** Issue a draft: from now on a class may rely on it, until something it rests on changes. Takes the key of a person. If the course asks for two persons, or did when it was drafted, another person than the one who drafted it issues it. */
    issue: (approvalId: string, options?: WriteOptions) =>
      caller.send<IssueApprovalResponse>(
        { method: "POST", path: "/v1/approvals/{approvalId}/issue", pathParameters: { approvalId }, isWrite: true },
        options,
      ),

    /** Issue a setting again as computed now, after its difference was seen. Takes the key of a person. If two persons are needed, the answer is a draft, which another person issues; until then the old one stays what it is. */
    reissue: (approvalId: string, body: ReissueApprovalData["body"], options?: WriteOptions) =>
      caller.send<ReissueApprovalResponse>(
        { method: "POST", path: "/v1/approvals/{approvalId}/reissue", pathParameters: { approvalId }, body, isWrite: true },
        options,
      ),

    /** End a setting at once */
    withdraw: (approvalId: string, body: WithdrawApprovalData["body"], options?: WriteOptions) =>
      caller.send<WithdrawApprovalResponse>(
        { method: "POST", path: "/v1/approvals/{approvalId}/withdraw", pathParameters: { approvalId }, body, isWrite: true },
        options,
      ),

    /** The signed sheet of a setting in force, to take to the machine and to check anywhere */
    getApprovalSheet: (approvalId: string, options?: CallOptions) =>
      caller.send<GetApprovalSheetResponse>(
        { method: "GET", path: "/v1/approvals/{approvalId}/sheet", pathParameters: { approvalId } },
        options,
      ),

    /** The full copy of what a setting was made from, and of the result */
    getApprovalGrounds: (approvalId: string, options?: CallOptions) =>
      caller.send<GetApprovalGroundsResponse>(
        { method: "GET", path: "/v1/approvals/{approvalId}/grounds", pathParameters: { approvalId } },
        options,
      ),

    /** A setting as it is and as it would be computed now */
    getApprovalDifference: (approvalId: string, options?: CallOptions) =>
      caller.send<GetApprovalDifferenceResponse>(
        { method: "GET", path: "/v1/approvals/{approvalId}/difference", pathParameters: { approvalId } },
        options,
      ),

    /** The signed list of settings whose sheets must no longer be believed */
    getApprovalStatus: (options?: CallOptions) =>
      caller.send<GetApprovalStatusResponse>(
        { method: "GET", path: "/v1/approvals/status" },
        options,
      ),

    /** A label to print for a setting, with a QR code that leads to its page and its check */
    getApprovalLabel: (approvalId: string, options?: CallOptions) =>
      caller.send<GetApprovalLabelResponse>(
        { method: "GET", path: "/v1/approvals/{approvalId}/label", pathParameters: { approvalId }, answers: ["image/svg+xml"] },
        options,
      ),
  };
}
