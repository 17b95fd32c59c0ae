import Type, { type Static } from "typebox";
import { because, ReasonSchema } from "../http/reason.ts";

const closed = { additionalProperties: false } as const;

export const BitRetirementSchema = Type.Object(
  {
    because,
    isReplaced: Type.Optional(
      Type.Boolean({
        description: "Whether another has taken its place. Default: no, so it is on the list to reorder.",
      }),
    ),
  },
  { $id: "BitRetirement", description: "Why a bit is taken out of use for good.", ...closed },
);

/** The components of what can be done to where a bit stands. */
export const STANDING_SCHEMAS = [ReasonSchema, BitRetirementSchema];

export type BitRetirement = Static<typeof BitRetirementSchema>;
