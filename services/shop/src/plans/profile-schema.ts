import Type, { type Static } from "typebox";
import { ref } from "../http/reference.ts";

const closed = { additionalProperties: false } as const;

const Point = Type.Object(
  {
    xMm: Type.Number({ description: "Into the work from its edge, or from the middle of a groove." }),
    zMm: Type.Number({ description: "Up from the table or base." }),
  },
  { $id: "ProfilePoint", description: "A corner of a cross-section.", ...closed },
);

const Piece = Type.Object(
  {
    boundary: Type.Array(ref(Point), {
      description: "Its corners in order; the last is joined to the first.",
    }),
    holes: Type.Array(Type.Array(ref(Point)), { description: "What is cut out inside it." }),
  },
  { $id: "ProfilePiece", description: "One piece of the cross-section that is left.", ...closed },
);

const PassProfile = Type.Object(
  {
    pass: Type.Integer({ minimum: 1, description: "The pass it follows." }),
    pieces: Type.Array(ref(Piece), { description: "What is left; two if a groove goes right through." }),
  },
  {
    $id: "PassProfile",
    description:
      "The cross-section of the work after a pass, square to the feed. Arcs are chords within 0.02 mm.",
    ...closed,
  },
);

export const ProfilesField = Type.Optional(
  Type.Array(ref(PassProfile), {
    description: "The work after each pass, if `profiles` was asked for; of a surface, after one row.",
  }),
);

export const PROFILE_SCHEMAS = [Point, Piece, PassProfile];

export type PassProfileAnswer = Static<typeof PassProfile>;
