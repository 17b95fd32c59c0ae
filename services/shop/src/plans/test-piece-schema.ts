import Type, { type Static } from "typebox";
import { ref } from "../http/reference.ts";

const closed = { additionalProperties: false } as const;
const sizeMm = (description: string) => Type.Optional(Type.Number({ minimum: 0, maximum: 300, description }));

export const TestPieceSchema = Type.Object(
  {
    depthMm: sizeMm("Depth of the cut in the face that lies on the table or under the base."),
    widthMm: sizeMm("How far the cut reaches in from the edge."),
  },
  {
    $id: "TestPiece",
    description:
      "What to measure on a test piece at the final setting. In a plan: what it must be; absent if a bearing decides all of it.",
    ...closed,
  },
);

export const CorrectionSchema = Type.Object(
  {
    measured: ref(TestPieceSchema),
    heightMm: Type.Number({ description: "Set the bit this far out of the table or base, to its tip." }),
    fenceMm: Type.Number({ description: "Set the fence this far in front of the bit's axis." }),
    texts: Type.Array(Type.String(), { description: "What is off, and what to do, one sentence each." }),
    at: Type.String({ format: "date-time", description: "When it was asked for." }),
  },
  { $id: "PlanCorrection", description: "A setting put right by a test piece.", ...closed },
);

export type PlanCorrection = Static<typeof CorrectionSchema>;
