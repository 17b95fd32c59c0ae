import type { FastifyRequest } from "fastify";
import Type from "typebox";
import type { BitReads } from "../bits/reads.ts";
import type { AnswerOnce } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { etagOf } from "../http/conditional.ts";
import { requireNamed, unknownRecord } from "../http/named-records.ts";
import { type Filters, idFilter, listRoute, readRoute, requireFound } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { changedMeanwhile, decidedAnew, stampOf, type Write } from "../http/write.ts";
import { callerOf, ownOrStaffs, personAsked } from "../keys/caller.ts";
import { notValid, Problem } from "../problems/problem.ts";
import { newId } from "../store/id.ts";
import type { RecordReads } from "../store/record-reads.ts";
import { lendBit, returnBit } from "./decide.ts";
import type { LoanReads } from "./reads.ts";
import {
  LOAN_SCHEMAS,
  LoanPageSchema,
  type LoanRecord,
  LoanReturnSchema,
  LoanSchema,
  type NewLoan,
  NewLoanSchema,
} from "./schema.ts";

type Parts = {
  readonly reads: LoanReads;
  readonly bits: BitReads;
  readonly people: RecordReads<"person">;
  readonly routers: RecordReads<"router">;
  readonly places: RecordReads<"place">;
  readonly write: Write;
  readonly answerOnce: AnswerOnce;
  readonly now: () => Date;
};

const LoanPath = Type.Object({ loanId: Type.String({ description: "Id of a loan." }) });

export function loanRoutes(app: App, parts: Parts): void {
  const { reads, bits, people, routers, places, write, answerOnce, now } = parts;
  for (const schema of LOAN_SCHEMAS) app.addSchema(schema);
  const common = { scope: "loans:read", tag: "loans" } as const;

  listRoute(
    app,
    {
      ...common,
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
    (afterId, most, filters, request) => list(afterId, most, filters, request),
  );

  readRoute(
    app,
    {
      ...common,
      path: "/v1/loans/:loanId",
      operationId: "getLoan",
      summary: "Read a loan",
      record: LoanSchema,
      noun: "loan",
      parameter: "loanId",
    },
    async (id, request) => ownOrStaffs(request, await reads.find(id)),
  );

  app.post(
    "/v1/loans",
    {
      config: { scope: "loans:write", operation: "create" },
      schema: {
        operationId: "createLoan",
        tags: ["loans"],
        summary: "Take a bit out; of two at once one gets it",
        body: ref(NewLoanSchema),
        response: { 201: ref(LoanSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        const stamp = stampOf(request, now());
        const personId = borrower(request, request.body);
        const { bitId, routerId } = request.body;
        const bit = await bits.find(bitId);
        const person = await people.find(personId);
        const router = routerId === undefined || (await routers.find(routerId));
        if (!bit || !person || !router) {
          throw notValid([
            ...(bit ? [] : [unknownRecord("/bitId", "bit")]),
            ...(person ? [] : [unknownRecord("/personId", "person")]),
            ...(router ? [] : [unknownRecord("/routerId", "router")]),
          ]);
        }
        if (person.state === "left") throw new Problem("person-left", `${person.name} has left.`);
        const { record, changes } = lendBit(newId("loan"), bit, { ...request.body, personId }, stamp.at);
        const expects = [{ type: "person", id: person.id, version: person.version } as const];
        const headers = { Location: `/v1/loans/${record.id}`, ETag: etagOf(record.version) };
        return { stamp, changes, expects, headers, body: record };
      }),
  );

  app.post(
    "/v1/loans/:loanId/return",
    {
      config: { scope: "loans:write", operation: "act" },
      schema: {
        operationId: "returnLoan",
        tags: ["loans"],
        summary: "Bring a bit back",
        params: LoanPath,
        body: ref(LoanReturnSchema),
        response: { 200: ref(LoanSchema) },
      },
    },
    (request, reply) =>
      decidedAnew(async () => {
        const { loanId } = request.params;
        const { placeId } = request.body;
        await requireNamed([{ pointer: "/placeId", noun: "place", id: placeId, reads: places }]);
        const loan = requireFound("loan", loanId, ownOrStaffs(request, await reads.find(loanId)));
        const stamp = stampOf(request, now());
        const { record, changes } = returnBit(loan, await bits.find(loan.bitId), placeId, stamp.at);
        await write({ stamp, changes }, changedMeanwhile);
        reply.header("ETag", etagOf(record.version));
        return record;
      }),
  );

  function list(
    afterId: string,
    most: number,
    filters: Filters,
    request: FastifyRequest,
  ): Promise<LoanRecord[]> {
    const { bitId, state } = filters;
    const personId = personAsked(request, filters["personId"]);
    if (state !== "overdue") {
      const returned = state === "out" ? { returnedAt: null } : {};
      return reads.page(afterId, most, { bitId, personId, ...returned });
    }
    return reads.overdue(now().toISOString(), { bitId, personId }, afterId, most);
  }
}

/** Who a loan is for. A program and staff say; a member is it themselves. */
function borrower(request: FastifyRequest, { personId }: NewLoan): string {
  const asked = personAsked(request, personId) ?? callerOf(request).personId;
  if (asked !== undefined) return asked;
  const accepted = "the id of the person who takes the bit";
  throw notValid([{ in: "body", pointer: "/personId", message: "This key belongs to no person.", accepted }]);
}
