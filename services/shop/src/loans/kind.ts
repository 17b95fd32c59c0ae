import { defineKind } from "../store/kind.ts";
import { LoanSchema } from "./schema.ts";

export const loanKind = defineKind({
  type: "loan",
  noun: "loan",
  idPrefix: "loan",
  path: "/v1/loans",
  tag: { name: "loans", description: "Bits out and back." },
  schema: LoanSchema,
  table: "loans",
});
