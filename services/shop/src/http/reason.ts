import Type from "typebox";

/** Why somebody does something. */
export const reason = Type.String({
  minLength: 3,
  maxLength: 300,
  pattern: "\\S",
  description: "text of 3 to 300 characters that says why",
});

export const ReasonSchema = Type.Object(
  { reason },
  { $id: "Reason", description: "Why something is done.", additionalProperties: false },
);
