import Type from "typebox";
import { ref } from "../http/reference.ts";
import { Clearance, FindingCode, LimitName, Verdict } from "../plans/codes.ts";
import { MarkSchema } from "../routers/schema.ts";

const closed = { additionalProperties: false } as const;

export const SettingSchema = Type.Object(
  {
    verdict: ref(Verdict.schema),
    mark: Type.Union([ref(MarkSchema), Type.Null()], { description: "The mark; null without a dial." }),
    rpm: Type.Union([Type.Integer(), Type.Null()], { description: "Nominal speed." }),
    ceilingRpm: Type.Integer({ description: "The least of the limits." }),
    bindingLimit: ref(LimitName.schema),
    clearance: ref(Clearance.schema),
    passes: Type.Array(
      Type.Object(
        {
          woodId: Type.String({ description: "The wood." }),
          heightMm: Type.Number({ description: "Height of the bit, to its tip." }),
          cutterMm: Type.Optional(Type.Number({ description: "Its cutter's part of that." })),
          fenceMm: Type.Number({ description: "Fence." }),
          feedMPerMin: Type.Number({ description: "Feed." }),
        },
        closed,
      ),
      { description: "Passes in order, wood by wood." },
    ),
    findings: Type.Array(ref(FindingCode.schema), { description: "What it rests on." }),
  },
  {
    $id: "Setting",
    description: "The setting in brief: what a person sets and what the bit is cleared for.",
    ...closed,
  },
);
