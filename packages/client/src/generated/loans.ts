// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller, WriteOptions } from "../operation.ts";
import type {
  CreateLoanData,
  CreateLoanResponse,
  GetLoanResponse,
  ListLoansData,
  ListLoansResponse,
  ReturnLoanData,
  ReturnLoanResponse,
} from "./types.gen.ts";

export function loansOf(caller: Caller) {
  return {
    /** List loans: all, what is out now, or what is overdue. Whoever is not in charge sees their own, and a member those of others too if the shop's policy shows who has what. */
    list: (query?: ListLoansData["query"], options?: CallOptions) =>
      caller.list<ListLoansResponse["data"][number]>(
        { method: "GET", path: "/v1/loans", query },
        "cursor", options,
      ),

    /** Take a bit out; of two at once one gets it */
    create: (body: CreateLoanData["body"], options?: WriteOptions) =>
      caller.send<CreateLoanResponse>(
        { method: "POST", path: "/v1/loans", body, isWrite: true },
        options,
      ),

    /** Read a loan */
    get: (loanId: string, options?: CallOptions) =>
      caller.send<GetLoanResponse>(
        { method: "GET", path: "/v1/loans/{loanId}", pathParameters: { loanId } },
        options,
      ),

    /** Bring a bit back */
    return: (loanId: string, body: ReturnLoanData["body"], options?: WriteOptions) =>
      caller.send<ReturnLoanResponse>(
        { method: "POST", path: "/v1/loans/{loanId}/return", pathParameters: { loanId }, body, isWrite: true },
        options,
      ),
  };
}
