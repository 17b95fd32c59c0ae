import type { FastifyRequest } from "fastify";
import Type from "typebox";
import { callerOf, ownPersonOnly, personAsked } from "../access/caller.ts";
import { bits } from "../bits/reads.ts";
import type { App } from "../http/app-type.ts";
import { requireNamed, unknownRecord } from "../http/named-records.ts";
import { idFilter, listRoute, readRoute } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { actRoute, createRoute } from "../http/write-routes.ts";
import { jobs } from "../jobs/reads.ts";
import { people } from "../people/kind.ts";
import { places } from "../places/reads.ts";
import { notValid, Problem } from "../problems/problem.ts";
import { routers } from "../routers/kind.ts";
import { areLoansShown, shopPolicy } from "../shop-policy/reads.ts";
import { newId } from "../store/id.ts";
import { lendBit, returnBit } from "./decide.ts";
import { requireNotKept } from "./kept-bits.ts";
import { loanKind } from "./kind.ts";
import { loans } from "./reads.ts";
import {
  LOAN_SCHEMAS,
  LoanPageSchema,
  LoanReturnSchema,
  LoanSchema,
  type NewLoan,
  NewLoanSchema,
} from "./schema.ts";

const READ = { scope: "loans:read", tag: "loans", of: loans } as const;
const WRITE = { scope: "loans:write", tag: "loans", of: loans, answer: LoanSchema } as const;

export function loanRoutes(app: App, doors: Doors): void {
  for (const schema of LOAN_SCHEMAS) app.addSchema(schema);

  listRoute(
    app,
    doors,
    {
      ...READ,
      path: "/v1/loans",
      operationId: "listLoans",
      summary: "List loans: all, what is out now, or what is overdue",
      description:
        "Whoever is not in charge sees their own, and a member those of others too if the shop's policy shows who has what.",
      page: LoanPageSchema,
      filters: {
        bitId: idFilter("Loans of this bit."),
        personId: idFilter("Loans to this person."),
        state: Type.Optional(
          Type.Enum(["out", "overdue"], {
            type: "string",
            description: "Only what is out, or out too long.",
          }),
        ),
      },
    },
    function* ({ afterId, most }, { query: { bitId, personId, state }, request, at }) {
      const shown = yield* shownLoans(request);
      const of = { bitId, personId };
      if (state === "overdue") return yield* shown.overdue(at, of, afterId, most);
      return yield* shown.page(afterId, most, { ...of, ...(state === "out" && { returnedAt: null }) });
    },
  );

  readRoute(
    app,
    doors,
    { ...READ, path: "/v1/loans/:loanId", operationId: "getLoan", summary: "Read a loan" },
    function* (id, { request }) {
      return yield* (yield* shownLoans(request)).find(id);
    },
  );

  createRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/loans",
      operationId: "createLoan",
      summary: "Take a bit out; of two at once one gets it",
      body: NewLoanSchema,
    },
    function* ({ body, request, at }) {
      const personId = borrower(request, body);
      const bit = yield* bits.find(body.bitId);
      const person = yield* people.find(personId);
      const router = body.routerId === undefined || (yield* routers.find(body.routerId));
      if (!bit || !person || !router) {
        throw notValid([
          ...(bit ? [] : [unknownRecord("/bitId", bits.kind.noun)]),
          ...(person ? [] : [unknownRecord("/personId", people.kind.noun)]),
          ...(router ? [] : [unknownRecord("/routerId", routers.kind.noun)]),
        ]);
      }
      if (person.state === "left") throw new Problem("person-left", `${person.name} has left.`);
      const { loanTermMaxDays } = yield* shopPolicy();
      yield* requireNamed([{ pointer: "/jobId", id: body.jobId, of: jobs }]);
      const asked = { ...body, personId, ...by(request) };
      const { record, changes } = lendBit(newId(loanKind.idPrefix), bit, asked, loanTermMaxDays, at);
      yield* requireNotKept(bit, record);
      const expects = [{ kind: people.kind, id: person.id, version: person.version }];
      return { changes, expects, answer: record };
    },
  );

  actRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/loans/:loanId/return",
      operationId: "returnLoan",
      summary: "Bring a bit back",
      body: LoanReturnSchema,
    },
    function* (loan, { body: { placeId }, request, at }) {
      yield* requireNamed([{ pointer: "/placeId", id: placeId, of: places }]);
      const { record, changes } = returnBit(
        loan,
        yield* bits.find(loan.bitId),
        placeId,
        callerOf(request).personId,
        at,
      );
      return { changes, answer: record };
    },
  );
}

/** Loans as far as the caller may see them. A student never sees who has what. */
function* shownLoans(request: FastifyRequest) {
  const own = ownPersonOnly(request);
  if (own === undefined) return loans;
  const isMember = callerOf(request).role === "member";
  return isMember && (yield* areLoansShown()) ? loans : loans.seenBy(own);
}

function by(request: FastifyRequest): { readonly lentBy?: string } {
  const { personId } = callerOf(request);
  return personId === undefined ? {} : { lentBy: personId };
}

/** Who a loan is for. A program and staff say; a member is it themselves. */
function borrower(request: FastifyRequest, { personId }: NewLoan): string {
  const asked = personAsked(request, personId) ?? callerOf(request).personId;
  if (asked !== undefined) return asked;
  const accepted = "the id of the person who takes the bit";
  throw notValid([{ in: "body", pointer: "/personId", message: "This key belongs to no person.", accepted }]);
}
