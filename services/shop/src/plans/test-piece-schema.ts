import Type, { type Static } from "typebox";
import { ref } from "../http/reference.ts";

const closed = { additionalProperties: false } as const;
const sizeMm = (description: string) => Type.Optional(Type.Number({ minimum: 0, maximum: 300, description }));

export const TestPieceSchema = Type.Object(
  {
    depthMm: sizeMm("Depth of the cut in the face that lies on the table or under the base."),
    widthMm: sizeMm(
      "How far the cut reaches in from the edge; of a groove that is cut in runs side by side, how wide it is.",
    ),
  },
  {
    $id: "TestPiece",
    description:
      "What to measure on a test piece at the final setting. In a plan: what it must be; absent if a bearing decides all of it.",
    ...closed,
  },
);

/** The setting that a test piece was cut at, if it is not the plan's own. */
export const CutAtSchema = Type.Object(
  {
    heightMm: Type.Optional(
      Type.Number({ minimum: 0, maximum: 400, description: "How far the bit stood out, to its tip." }),
    ),
    fenceMm: Type.Optional(
      Type.Number({
        minimum: -300,
        maximum: 300,
        description: "How far the fence stood in front of the bit's axis.",
      }),
    ),
    lastRunOverMm: Type.Optional(
      Type.Number({
        minimum: 0,
        maximum: 300,
        description: "Of a groove wider than the bit: how far its last run lay over from the first.",
      }),
    ),
  },
  {
    $id: "CutAt",
    description:
      "The setting that the test piece was cut at, such as an earlier correction's. Default: the plan's final setting.",
    ...closed,
  },
);

export type CutAt = Static<typeof CutAtSchema>;

export const CorrectionSchema = Type.Object(
  {
    measured: ref(TestPieceSchema),
    heightMm: Type.Number({ description: "Set the bit this far out of the table or base, to its tip." }),
    cutterMm: Type.Optional(
      Type.Number({
        description: "How much of that is its cutter. Absent in corrections of older versions' plans.",
      }),
    ),
    fenceMm: Type.Number({ description: "Set the fence this far in front of the bit's axis." }),
    lastRunOverMm: Type.Optional(
      Type.Number({
        description: "Of a groove wider than the bit: set its last run this far over from the first.",
      }),
    ),
    texts: Type.Array(Type.String(), { description: "What is off, and what to do, one sentence each." }),
    at: Type.String({ format: "date-time", description: "When it was asked for." }),
  },
  { $id: "PlanCorrection", description: "A setting put right by a test piece.", ...closed },
);

export type PlanCorrection = Static<typeof CorrectionSchema>;
