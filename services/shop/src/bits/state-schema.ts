import Type, { type Static } from "typebox";
import { momentField } from "../http/fields.ts";

export const BIT_STATES = ["in-rack", "on-loan", "at-sharpening", "held", "retired"] as const;

export type BitState = (typeof BIT_STATES)[number];

const closed = { additionalProperties: false } as const;

const CAUSES = ["inspection", "use", "sharpening", "size", "person"] as const;

const reason = Type.String({ minLength: 1, maxLength: 300, pattern: "\\S", description: "Why." });

export const HoldSchema = Type.Object(
  {
    since: momentField("Since when."),
    reason,
    cause: Type.Enum([...CAUSES], { type: "string", description: "What led to it." }),
    causeId: Type.Optional(Type.String({ description: "Id of the record that led to it." })),
    by: Type.Optional(
      Type.String({
        description: "Who held it: a person, or the key of a program. Absent if nobody did by hand.",
      }),
    ),
    isByStaff: Type.Optional(Type.Boolean({ description: "Whether they were in charge of others." })),
  },
  { $id: "Hold", description: "Out of use until somebody in charge releases it.", ...closed },
);

export const RetirementSchema = Type.Object(
  {
    at: momentField("When."),
    reason,
    isReplaced: Type.Boolean({
      description: "Whether another has taken its place; until then it is to reorder.",
    }),
  },
  { $id: "Retirement", description: "Out of use for good.", ...closed },
);

export const BitUseSchema = Type.Object(
  {
    uses: Type.Integer({ minimum: 0, description: "How often it was logged." }),
    metres: Type.Number({ minimum: 0, description: "Metres cut in all." }),
    minutes: Type.Number({ minimum: 0, description: "Minutes run in all." }),
    metresSinceInspection: Type.Number({
      minimum: 0,
      description: "Metres cut since it was last inspected.",
    }),
    equivalentMetresSinceSharpening: Type.Number({
      minimum: 0,
      description:
        "What the edge has cut since it was sharpened, as metres of solid wood of middling density.",
    }),
  },
  { $id: "BitUse", description: "What has been logged of a bit.", ...closed },
);

/** Everything of a bit that only its own history changes, never a PATCH. */
export const bitStateFields = {
  state: Type.Enum([...BIT_STATES], { type: "string", description: "Where it stands." }),
  hold: Type.Optional(Type.Unsafe<Hold>({ $ref: "Hold#" })),
  retirement: Type.Optional(Type.Unsafe<Retirement>({ $ref: "Retirement#" })),
  loanId: Type.Optional(Type.String({ description: "The loan it is out on." })),
  sentToSharpeningAt: Type.Optional(momentField("Since when it is away.")),
  placeId: Type.Optional(Type.String({ description: "Where it was last seen." })),
  missingSince: Type.Optional(momentField("Since the count at which it was not seen.")),
  inspectedAt: Type.Optional(momentField("When it was last inspected.")),
  inspectionDueAt: Type.Optional(momentField("When its next inspection is due.")),
  sharpenedAt: Type.Optional(momentField("When it was last sharpened.")),
  nominalDiameterMm: Type.Optional(
    Type.Number({
      exclusiveMinimum: 0,
      description: "Its greatest diameter before it was first sharpened: it is still found by it.",
    }),
  ),
  used: Type.Unsafe<BitUse>({ $ref: "BitUse#" }),
};

export type Hold = Static<typeof HoldSchema>;
export type Retirement = Static<typeof RetirementSchema>;
export type BitUse = Static<typeof BitUseSchema>;

/** The part of a bit's record that its history changes. */
export type BitStanding = {
  readonly state: BitState;
  readonly hold?: Hold;
  readonly retirement?: Retirement;
  readonly loanId?: string;
  readonly sentToSharpeningAt?: string;
  readonly placeId?: string;
  readonly missingSince?: string;
  readonly inspectedAt?: string;
  readonly inspectionDueAt?: string;
  readonly sharpenedAt?: string;
  readonly nominalDiameterMm?: number;
  readonly used: BitUse;
};
