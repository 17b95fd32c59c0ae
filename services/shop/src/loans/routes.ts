import type { FastifyRequest } from "fastify";
import Type from "typebox";
import { callerOf, personAsked, visibleRecord } from "../access/caller.ts";
import { bits } from "../bits/reads.ts";
import type { App } from "../http/app-type.ts";
import { requireNamed, unknownRecord } from "../http/named-records.ts";
import { idFilter, listRoute, readRoute } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { actRoute, createRoute } from "../http/write-routes.ts";
import { people } from "../people/kind.ts";
import { places } from "../places/reads.ts";
import { notValid, Problem } from "../problems/problem.ts";
import { routers } from "../routers/kind.ts";
import { newId } from "../store/id.ts";
import type { Question } from "../store/query.ts";
import { lendBit, returnBit } from "./decide.ts";
import { loanKind } from "./kind.ts";
import { loans } from "./reads.ts";
import {
  LOAN_SCHEMAS,
  LoanPageSchema,
  type LoanRecord,
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
      summary: "List loans: all, what is out now, or what is overdue. A member sees their own",
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
    ({ afterId, most }, { query, request, at }) => {
      const { bitId, state } = query;
      const of = { bitId, personId: personAsked(request, query.personId) };
      if (state === "overdue") return loans.overdue(at, of, afterId, most);
      return loans.page(afterId, most, { ...of, ...(state === "out" && { returnedAt: null }) });
    },
  );

  readRoute(
    app,
    doors,
    { ...READ, path: "/v1/loans/:loanId", operationId: "getLoan", summary: "Read a loan" },
    visibleLoan,
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
      const { record, changes } = lendBit(newId(loanKind.idPrefix), bit, { ...body, personId }, at);
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
      find: visibleLoan,
    },
    function* (loan, { body: { placeId }, at }) {
      yield* requireNamed([{ pointer: "/placeId", id: placeId, of: places }]);
      const { record, changes } = returnBit(loan, yield* bits.find(loan.bitId), placeId, at);
      return { changes, answer: record };
    },
  );
}

function* visibleLoan(
  id: string,
  { request }: { readonly request: FastifyRequest },
): Question<LoanRecord | undefined> {
  return visibleRecord(request, yield* loans.find(id));
}

/** Who a loan is for. A program and staff say; a member is it themselves. */
function borrower(request: FastifyRequest, { personId }: NewLoan): string {
  const asked = personAsked(request, personId) ?? callerOf(request).personId;
  if (asked !== undefined) return asked;
  const accepted = "the id of the person who takes the bit";
  throw notValid([{ in: "body", pointer: "/personId", message: "This key belongs to no person.", accepted }]);
}
