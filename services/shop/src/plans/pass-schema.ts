import Type from "typebox";

const closed = { additionalProperties: false } as const;

/** One pass of a plan: how it is set, what it removes and what it bears. */
export const PlanPassSchema = Type.Object(
  {
    number: Type.Integer({ minimum: 1, description: "Place in the order of passes." }),
    kind: Type.Enum(["back-rout", "rough", "finish"], {
      type: "string",
      description: "One that finishes is lighter than all others; a back-rout is fed with the rotation.",
    }),
    heightMm: Type.Number({ description: "Set the bit this far out of the table or base, to its tip." }),
    cutterMm: Type.Optional(
      Type.Number({
        description:
          "How much of that is its cutter: what is measured on a bit with a bearing on its tip. Absent in plans of older versions.",
      }),
    ),
    fenceMm: Type.Number({ description: "Set the fence this far in front of its axis." }),
    runs: Type.Optional(
      Type.Integer({
        minimum: 1,
        description:
          "How many runs side by side, of a cut wider than the bit: the fence is the last one's. Absent otherwise, and in plans of older versions.",
      }),
    ),
    lastRunOverMm: Type.Optional(
      Type.Number({
        description:
          "Of a groove wider than the bit: how far its last run lies over from the first. Absent otherwise, and in plans of older versions.",
      }),
    ),
    biteMm: Type.Number({ description: "How far the setting moved since the pass before." }),
    removedAreaMm2: Type.Number({ description: "Section of wood removed, square to the feed." }),
    engagedMm: Type.Number({ description: "Extent of the cut square to the direction the setting moves." }),
    feedMPerMin: Type.Number({ description: "Feed." }),
    feedPerToothMm: Type.Number({ description: "Advance from one cutting edge to the next." }),
    chipMeanMm: Type.Number({ description: "Mean chip thickness along the arc." }),
    chipGreatestMm: Type.Number({ description: "Greatest chip thickness along the arc." }),
    chipThinningRatio: Type.Number({
      description: "How much faster it could be fed for the greatest chip of a half-immersed cut.",
    }),
    toothMarkPitchMm: Type.Number({
      description: "Distance between the marks of the one tooth that leaves the finish.",
    }),
    waveHeightMm: Type.Number({ description: "Height of the waves between them." }),
    peakForceN: Type.Number({ description: "Greatest force of one tooth, at the upper edge of its band." }),
    torqueNm: Type.Number({ description: "Mean torque at the collet, at the upper edge of its band." }),
    shankStressMPa: Type.Number({
      description:
        "Greatest stress under the peak force, of the shank or of a neck or cutter thinner than it.",
    }),
    shankDeflectionMm: Type.Number({ description: "How far the peak force bends the edge aside." }),
    powerW: Type.Number({ description: "Mean cutting power, at the upper edge of its band." }),
    secondsPerEdge: Type.Array(Type.Number(), {
      description: "How long a hand takes along each edge, in the request's order.",
    }),
    heldBy: Type.String({ description: "The constraint it uses most: at 100 percent it is at its bound." }),
    uses: Type.Array(
      Type.Object(
        { constraint: Type.String(), percent: Type.Number() },
        { description: "How much of one constraint the pass uses.", ...closed },
      ),
      { description: "Every constraint on the pass." },
    ),
    display: Type.Optional(
      Type.Object(
        {
          height: Type.String(),
          cutter: Type.Optional(Type.String()),
          fence: Type.String(),
          removedArea: Type.String(),
          feed: Type.String(),
        },
        { description: "As a person would read it; present if `units` was given.", ...closed },
      ),
    ),
  },
  { $id: "PlanPass", description: "One pass.", ...closed },
);
