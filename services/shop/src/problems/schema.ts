import Type from "typebox";
import { PROBLEMS } from "./codes.ts";

const FieldFaultSchema = Type.Object(
  {
    in: Type.Enum(["body", "query", "path", "header"], {
      type: "string",
      description: "Part of the request.",
    }),
    pointer: Type.String({ description: "JSON Pointer (RFC 6901) of the field in that part." }),
    message: Type.String({ description: "What is wrong with it." }),
    accepted: Type.String({ description: "What would be accepted." }),
  },
  { additionalProperties: false },
);

export const ProblemSchema = Type.Object(
  {
    type: Type.String({ description: "Stable URN of this kind of problem." }),
    title: Type.String({ description: "What kind of problem it is." }),
    status: Type.Integer({ description: "The HTTP status." }),
    detail: Type.String({ description: "What happened this time." }),
    instance: Type.String({ description: "The path that was asked for." }),
    code: Type.Enum(Object.keys(PROBLEMS), { type: "string", description: "Stable code to branch on." }),
    requestId: Type.String({ description: "Quote it when asking for help; it is in the service's log." }),
    errors: Type.Optional(
      Type.Array(FieldFaultSchema, {
        description: "Every field that cannot be accepted. Nothing was changed.",
      }),
    ),
    report: Type.Optional(Type.Unsafe<object>({ $ref: "ImportReport#" })),
  },
  { $id: "Problem", description: "An error in the form of RFC 9457.", additionalProperties: false },
);
