// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { AnyOptions, CallOptions, Caller, ConditionalOptions, Loose, WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { ListLoansData, Loan, LoanReturn, NewLoan } from "./types.gen.ts";

/** Bits out and back. */
export interface LoansResource {
  /**
   * List loans: all, what is out now, or what is overdue
   *
   * Whoever is not in charge sees their own, and a member those of others too if the shop's policy shows who has what.
   *
   * `GET /v1/loans`
   */
  list(query?: Loose<NonNullable<ListLoansData["query"]>>, options?: CallOptions): Pages<Loan>;

  /**
   * Take a bit out; of two at once one gets it
   *
   * `POST /v1/loans`
   */
  create(body: NewLoan, options?: WriteOptions): Answer<Loan>;

  /**
   * Read a loan
   *
   * `GET /v1/loans/{loanId}`
   */
  get(loanId: string, options: ConditionalOptions): Answer<Loan | NotModified>;
  /**
   * Read a loan
   *
   * `GET /v1/loans/{loanId}`
   */
  get(loanId: string, options?: CallOptions): Answer<Loan>;

  /**
   * Bring a bit back
   *
   * `POST /v1/loans/{loanId}/return`
   */
  return(loanId: string, body: LoanReturn, options?: WriteOptions): Answer<Loan>;
}

export function loansOf(caller: Caller): LoansResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/loans", query }, options),
    create: (body, options) =>
      caller.send({ method: "POST", path: "/v1/loans", body }, options),
    get: (loanId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/loans/{}", ids: [loanId] }, options),
    return: (loanId, body, options) =>
      caller.send({ method: "POST", path: "/v1/loans/{}/return", ids: [loanId], body }, options),
  };
}
