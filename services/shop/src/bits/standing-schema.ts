import Type, { type Static } from "typebox";
import { ref } from "../http/reference.ts";

const closed = { additionalProperties: false } as const;

const because = Type.String({
  minLength: 3,
  maxLength: 300,
  pattern: "\\S",
  description: "text of 3 to 300 characters that says why",
});

export const ReasonSchema = Type.Object(
  { because },
  { $id: "Reason", description: "Why something is done.", ...closed },
);

export const BitRetirementSchema = Type.Object(
  {
    because,
    isReplaced: Type.Optional(
      Type.Boolean({ description: "Whether another has taken its place. Left out: no, it is to reorder." }),
    ),
  },
  { $id: "BitRetirement", description: "Why a bit is taken out of use for good.", ...closed },
);

/** The components of what can be done to where a bit stands. */
export const STANDING_SCHEMAS = [ReasonSchema, BitRetirementSchema];

export const reasonBody = ref(ReasonSchema);

export type BitRetirement = Static<typeof BitRetirementSchema>;
