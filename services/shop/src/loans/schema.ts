import Type, { type Static } from "typebox";
import { idField, keptFields, momentField, referenceField } from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { ref } from "../http/reference.ts";

const job = Type.Optional(
  Type.String({ minLength: 1, maxLength: 200, description: "What it is for, such as an order's name." }),
);

export const NewLoanSchema = Type.Object(
  {
    bitId: referenceField("the bit"),
    personId: Type.Optional(
      referenceField("the person; default: the one whose key asks. A member borrows in their own name only"),
    ),
    routerId: Type.Optional(referenceField("the router it goes into")),
    job,
    jobId: Type.Optional(
      referenceField("the job it is for; one that is kept for a job is lent for that job"),
    ),
    dueAt: Type.Optional(
      momentField("When it should be back, within the policy's loanTermMaxDays. Default: 24 hours from now."),
    ),
  },
  { $id: "NewLoan", description: "A bit to take out.", additionalProperties: false },
);

export const LoanReturnSchema = Type.Object(
  { placeId: Type.Optional(referenceField("the place it was put; default: the place it belongs to")) },
  { $id: "LoanReturn", description: "A bit brought back.", additionalProperties: false },
);

export const LoanSchema = Type.Object(
  {
    id: idField("loan"),
    bitId: Type.String({ description: "The bit." }),
    personId: Type.String({ description: "Who has it." }),
    lentBy: Type.Optional(
      Type.String({ description: "The person whose key took it out; absent for a program's." }),
    ),
    returnedBy: Type.Optional(Type.String({ description: "The person whose key brought it back." })),
    routerId: Type.Optional(Type.String({ description: "The router it went into." })),
    job,
    jobId: Type.Optional(Type.String({ description: "The job it is for." })),
    dueAt: momentField("When it should be back."),
    returnedAt: Type.Optional(momentField("When it came back. Absent while it is out.")),
    returnedPlaceId: Type.Optional(Type.String({ description: "Where it was put." })),
    ...keptFields,
  },
  { $id: "Loan", description: "A bit that somebody took.", additionalProperties: false },
);

export const LoanPageSchema = pageSchema("LoanPage", ref(LoanSchema), "Loans, oldest first.");

/** The components this resource answers and takes. */
export const LOAN_SCHEMAS = [NewLoanSchema, LoanReturnSchema, LoanSchema, LoanPageSchema];

export type NewLoan = Static<typeof NewLoanSchema>;

/** A bit that somebody took, until it is back. */
export type LoanRecord = Static<typeof LoanSchema>;
