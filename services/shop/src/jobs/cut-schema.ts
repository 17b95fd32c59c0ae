import {
  CUTS,
  type CutSettings,
  type CutSummary,
  EVERY_CUT_FIELDS,
  FORMS,
  JOINTS,
  PART_FIELDS,
  type PartPlace,
} from "@rimwise/domain";
import Type, { type Static, type TSchema } from "typebox";
import { componentName, fieldProperties, fieldSchema } from "../http/field-schema.ts";
import { referenceField } from "../http/fields.ts";
import { ref } from "../http/reference.ts";
import { unionOf } from "../http/union.ts";
import { jointField, jointSizes } from "../joints/schema.ts";
import { ProfileSearchSchema } from "../profiles/search-schema.ts";
import { ProfileShapeSchema } from "../profiles/shape-schema.ts";

const closed = { additionalProperties: false } as const;

type Component = TSchema & { readonly $id: string };

/** What the part says of every cut in it. */
const SAID_BY_PART: readonly string[] = ["thicknessMm"];

const KIND_SCHEMAS: readonly Component[] = CUTS.map(settingsSchema);

const CutSettingsSchema = unionOf<CutSettings>(
  "CutSettings",
  "kind",
  KIND_SCHEMAS,
  "A kind of cut and its settings, without what the part says: its edges, its size and its thickness.",
);

const settings = ref(CutSettingsSchema);

const NamedBitSchema = Type.Object(
  {
    by: Type.Literal("bit"),
    bitId: referenceField("the bit of the rack"),
    cut: settings,
  },
  { $id: "CutByBit", description: "A bit and a setting that somebody has chosen.", ...closed },
);

const NamedFormSchema = Type.Object(
  {
    by: Type.Literal("form"),
    form: Type.Enum(
      FORMS.map(({ kind }) => kind),
      { type: "string", description: "The form wanted, such as `round-over`." },
    ),
    sizes: Type.Optional(
      Type.Record(
        Type.String({ maxLength: 60 }),
        Type.Union([Type.Number(), Type.String({ maxLength: 60 })]),
        {
          description:
            "Dimensions of the form that matter, as a bit has them, such as `radiusMm` of a round-over.",
        },
      ),
    ),
    toleranceMm: Type.Optional(
      Type.Number({
        minimum: 0.01,
        maximum: 5,
        description: "How far off a size may be. Default: 0.1 mm; of an angle, as many degrees.",
      }),
    ),
    cut: Type.Optional(settings),
  },
  {
    $id: "CutByForm",
    description:
      "A form with sizes: any bit of the rack that has them will do. Default of `cut`: the form's usual one.",
    ...closed,
  },
);

const NamedProfileSchema = Type.Object(
  {
    by: Type.Literal("profile"),
    shape: Type.Optional(ref(ProfileShapeSchema)),
    profileId: Type.Optional(referenceField("a profile of the library instead of a shape")),
    toleranceMm: ProfileSearchSchema.properties.toleranceMm,
    setupsMax: ProfileSearchSchema.properties.setupsMax,
  },
  {
    $id: "CutByProfile",
    description:
      "A profile along an edge: the bits that make it are searched, alone or several together. Its thickness is the part's.",
    ...closed,
  },
);

/** The halves of every joint. */
const HALF_NAMES = [...new Set(JOINTS.flatMap(({ halves }) => halves.map(({ name }) => name)))];

const NamedJointSchema = Type.Object(
  {
    by: Type.Literal("joint"),
    joint: jointField,
    half: Type.Enum(HALF_NAMES, {
      type: "string",
      description: "Which half this cut is.",
    }),
    sizes: NamedFormSchema.properties.sizes,
    otherSizes: NamedFormSchema.properties.sizes,
    toleranceMm: NamedFormSchema.properties.toleranceMm,
    ...jointSizes,
  },
  {
    $id: "CutByJoint",
    description:
      "One half of a joint: the two bits of the rack that fit each other best are taken, and their settings solved. `sizes` hold for the bit of this half, `otherSizes` for that of the other.",
    ...closed,
  },
);

export type WantedByJoint = Static<typeof NamedJointSchema>;

/** What a cut wants: told apart by `by`. */
export type Wanted =
  | Static<typeof NamedBitSchema>
  | Static<typeof NamedFormSchema>
  | Static<typeof NamedProfileSchema>
  | Static<typeof NamedJointSchema>;

export type WantedByProfile = Static<typeof NamedProfileSchema>;

const WANTED_SCHEMAS = [NamedBitSchema, NamedFormSchema, NamedProfileSchema, NamedJointSchema];

const WantedSchema = unionOf<Wanted>(
  "CutWanted",
  "by",
  WANTED_SCHEMAS,
  "What a cut is made with, or what is wanted.",
);

export const MachineSchema = Type.Object(
  {
    routerId: referenceField("the router"),
    mounting: Type.Enum(["table", "handheld"], { type: "string", description: "How it is held." }),
  },
  { $id: "JobMachine", description: "A router of the shop as it is held.", ...closed },
);

export const JobCutSchema = Type.Object(
  {
    along: Type.Unsafe<PartPlace>(fieldSchema(PART_FIELDS.along)),
    wanted: ref(WantedSchema),
    machine: Type.Optional(ref(MachineSchema)),
    positionMm: Type.Optional(
      Type.Number({
        minimum: 0,
        maximum: 10_000,
        description:
          "Of a groove in a face: how far its middle lies from the edge or end that it is measured from. Grooves in other places are other set-ups. Default: all of one kind in one place.",
      }),
    ),
  },
  {
    $id: "JobCut",
    description: "One cut in every piece of a part. Default of `machine`: the best of the job's.",
    ...closed,
  },
);

export const CUT_SCHEMAS = [
  ...KIND_SCHEMAS,
  CutSettingsSchema,
  ...WANTED_SCHEMAS,
  WantedSchema,
  MachineSchema,
  JobCutSchema,
];

export type JobCut = Static<typeof JobCutSchema>;
export type Machine = Static<typeof MachineSchema>;

function settingsSchema({ kind, meaning, fields }: CutSummary): Component {
  const own = Object.entries({ ...EVERY_CUT_FIELDS, ...fields }).filter(
    ([name]) => !SAID_BY_PART.includes(name),
  );
  const schema = Type.Object(
    { kind: Type.Literal(kind), ...fieldProperties(Object.fromEntries(own), fieldSchema) },
    { description: meaning, ...closed },
  );
  return { ...schema, $id: componentName(kind, "CutSettings") };
}
