import Type, { type Static } from "typebox";
import { orNull } from "../http/fields.ts";
import { ref } from "../http/reference.ts";
import { MarkSchema } from "../routers/schema.ts";
import { LimitName, RaisedByCode, SpeedBasis, UncertaintyCode } from "./codes.ts";

const closed = { additionalProperties: false } as const;
const text = Type.String({ description: "The sentence for people." });

const RaisedBy = Type.Object(
  { code: ref(RaisedByCode.schema), text },
  { $id: "RaisedBy", description: "What would lift a limit.", ...closed },
);

const FasterSetting = Type.Object(
  {
    mark: orNull(ref(MarkSchema), "The next faster mark; null without a dial."),
    rpm: Type.Integer({ description: "Its nominal speed." }),
    rpmHighest: Type.Integer({ description: "The fastest it may actually run there." }),
    breaks: Type.Array(ref(LimitName.schema), { description: "The limits it would break." }),
  },
  { $id: "FasterSetting", description: "Why the next mark is too fast.", ...closed },
);

const Rotation = Type.Object(
  {
    rpm: Type.Integer({ description: "The fastest it may actually run." }),
    storedEnergyJ: Type.Number({ description: "Energy of the spin." }),
    unbalanceForceN: Type.Number({
      description: "Rotating force of the unbalance, with the swing it causes.",
    }),
    unbalancePerWeightRatio: Type.Number({ description: "The same as a multiple of the bit's weight." }),
    balanceGradeMmPerS: Type.Number({ description: "Eccentricity times angular speed (ISO 21940-11)." }),
    criticalSpeedRpm: Type.Integer({ description: "First bending resonance, with what the collet gives." }),
    rimStressMPa: Type.Number({ description: "Hoop stress of the rim as a thin steel ring." }),
    bodyStressMPa: Type.Number({ description: "Stress of the body as a steel disc with a hole." }),
    tipForceN: Type.Number({ description: "Pull on one tip at the rim." }),
    tipEnergyJ: Type.Number({ description: "Energy of that tip if it came off." }),
    gyroscopicCoupleNm: Type.Number({ description: "Couple with which it resists being tilted at 1 rad/s." }),
  },
  {
    $id: "PlanRotation",
    description: "What spinning does to the bit, each figure at its safe edge.",
    ...closed,
  },
);

const ceiling = {
  ceilingRpm: Type.Integer({ description: "The least of the limits." }),
  bindingLimit: ref(LimitName.schema),
  nextLimit: orNull(ref(LimitName.schema), "The limit that would hold if that one were lifted."),
  raisedBy: orNull(ref(RaisedBy), "What would lift the binding limit; null if nothing may."),
  uncertainties: Type.Array(
    Type.Object(
      {
        code: ref(UncertaintyCode.schema),
        gainRpm: Type.Integer({ description: "Speed gained by measuring it." }),
        text,
      },
      closed,
    ),
    { description: "What not knowing costs, the dearest first." },
  ),
};

const setting = {
  rpm: Type.Integer({ description: "Nominal speed to run at." }),
  rpmHighest: Type.Integer({ description: "The fastest it may actually be there: under every hard limit." }),
  basis: ref(SpeedBasis.schema),
  rimSpeedMPerS: Type.Number({ description: "Speed of the rim there." }),
  rimSpeedMph: Type.Number({ description: "The same in miles an hour." }),
  slowestEdgeMPerS: Type.Number({
    description: "Speed of the slowest point of the edge in the wood: there it burns first.",
  }),
  rotation: ref(Rotation),
};

const mayBeNull = {
  mark: orNull(ref(MarkSchema), "The mark to turn to; null without a dial."),
  nextFaster: orNull(ref(FasterSetting), "Why not one mark faster; null on the fastest."),
};

/** The speed of a plan that may be run. */
export const Speed = Type.Object(
  {
    ...ceiling,
    ...setting,
    ...mayBeNull,
    display: Type.Optional(
      Type.Object(
        { rpm: Type.String(), rimSpeed: Type.String() },
        { description: "As a person would read it; present if `units` was given.", ...closed },
      ),
    ),
  },
  { $id: "PlanSpeed", description: "The ceiling and the setting under it.", ...closed },
);

const none = Type.Null({ description: "No speed may be run." });

/** What is left to say of the speed if nothing may be run. */
export const NoSpeed = Type.Object(
  {
    ...ceiling,
    rpm: none,
    rpmHighest: none,
    basis: none,
    rimSpeedMPerS: none,
    rimSpeedMph: none,
    slowestEdgeMPerS: none,
    rotation: none,
    mark: none,
    nextFaster: none,
  },
  { $id: "NoPlanSpeed", description: "The ceiling, under which no setting may be run.", ...closed },
);

/** The components of a plan's speed. */
export const SPEED_SCHEMAS = [RaisedBy, FasterSetting, Rotation, Speed, NoSpeed];

type OrNull<Fields> = { [Name in keyof Fields]: Fields[Name] | null };

/** Either of the two. */
export type SpeedAnswer = Omit<Static<typeof Speed>, keyof typeof setting> &
  OrNull<Pick<Static<typeof Speed>, keyof typeof setting>>;
