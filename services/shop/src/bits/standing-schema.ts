import Type, { type Static } from "typebox";
import { idField, keptFields } from "../http/fields.ts";
import { ReasonSchema, reason } from "../http/reason.ts";
import type { BitRecord } from "./schema.ts";
import { bitStateFields, type Hold } from "./state-schema.ts";

const closed = { additionalProperties: false } as const;

export const BitRetirementSchema = Type.Object(
  {
    reason,
    isReplaced: Type.Optional(
      Type.Boolean({
        description: "Whether another has taken its place. Default: no, so it is on the list to reorder.",
      }),
    ),
  },
  { $id: "BitRetirement", description: "Why a bit is taken out of use for good.", ...closed },
);

/** What anybody is shown who holds a bit, also those who do not see the rack. */
export const HeldBitSchema = Type.Object(
  {
    id: idField("bit"),
    name: Type.String({ description: "The bit." }),
    state: bitStateFields.state,
    hold: Type.Unsafe<Hold>({ $ref: "Hold#" }),
    version: keptFields.version,
  },
  {
    $id: "HeldBit",
    description: "A bit that is out of use until somebody in charge releases it.",
    ...closed,
  },
);

/** A held bit, as short as anybody may see it. */
export function heldBit({ id, name, state, hold, version }: BitRecord): Static<typeof HeldBitSchema> {
  if (hold === undefined) throw new Error(`${id} is not held`);
  return { id, name, state, hold, version };
}

/** The components of what can be done to where a bit stands. */
export const STANDING_SCHEMAS = [ReasonSchema, BitRetirementSchema, HeldBitSchema];

export type BitRetirement = Static<typeof BitRetirementSchema>;
