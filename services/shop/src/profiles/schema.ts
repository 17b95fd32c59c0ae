import Type, { type Static } from "typebox";
import {
  externalIdField,
  idField,
  keptFields,
  momentField,
  nameField,
  notesField,
  type PatchOf,
  patchSchema,
  referenceField,
} from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { ref } from "../http/reference.ts";
import { MarkSchema } from "../routers/schema.ts";
import { ProfileShapeSchema, SHAPE_SCHEMAS } from "./shape-schema.ts";

const closed = { additionalProperties: false } as const;

const profileFields = {
  name: nameField("Base moulding of the hall"),
  externalId: Type.Optional(externalIdField),
  notes: Type.Optional(notesField),
  shape: ref(ProfileShapeSchema),
};

export const NewProfileSchema = Type.Object(profileFields, {
  $id: "NewProfile",
  description: "A profile of the shop's own.",
  ...closed,
});

export const ProfileChangeSchema = patchSchema<Static<typeof NewProfileSchema>>(
  "ProfileChange",
  NewProfileSchema,
  "What to change of a profile. A given field replaces the old one whole; null removes one that is optional.",
);

const setting = {
  bitId: referenceField("the bit"),
  routerId: Type.Optional(referenceField("the router")),
  mark: Type.Optional(ref(MarkSchema)),
  heightMm: Type.Number({ minimum: 0, maximum: 400, description: "How far the bit stood out." }),
  fenceMm: Type.Number({
    minimum: -300,
    maximum: 300,
    description: "The fence, in front of the bit's axis.",
  }),
  work: Type.Enum(["flat", "standing"], { type: "string", description: "How the work lay." }),
  face: Type.Enum(["front", "back"], {
    type: "string",
    description: "Which face was down, or to the fence if it stood.",
  }),
};

export const ProfileMakingSchema = Type.Object(
  {
    place: Type.Optional(nameField("The hall, north wall")),
    jobId: Type.Optional(referenceField("the job it was made in")),
    at: Type.Optional(momentField("When; default: now.")),
    settings: Type.Array(Type.Object(setting, closed), {
      minItems: 1,
      maxItems: 8,
      description: "Every set-up it took, in order.",
    }),
  },
  { $id: "NewProfileMaking", description: "Where a profile was made, and with what settings.", ...closed },
);

const MadeSchema = Type.Object(
  { ...ProfileMakingSchema.properties, at: momentField("When.") },
  { $id: "ProfileMaking", description: "Where a profile was made, and with what settings.", ...closed },
);

/** A profile that was made so often is known well enough: of older ones, the newest stay. */
export const MOST_MAKINGS = 50;

export const ProfileSchema = Type.Object(
  {
    id: idField("profile"),
    ...profileFields,
    made: Type.Array(ref(MadeSchema), {
      maxItems: MOST_MAKINGS,
      description: "Where it was made and how, oldest first.",
    }),
    ...keptFields,
  },
  { $id: "Profile", description: "A profile of the shop's own library.", ...closed },
);

export const ProfilePageSchema = pageSchema("ProfilePage", ref(ProfileSchema), "Profiles, oldest first.");

export const PROFILE_SCHEMAS = [
  ...SHAPE_SCHEMAS,
  NewProfileSchema,
  ProfileChangeSchema,
  ProfileMakingSchema,
  MadeSchema,
  ProfileSchema,
  ProfilePageSchema,
];

export type NewProfile = Static<typeof NewProfileSchema>;
export type ProfileChange = PatchOf<NewProfile>;
export type ProfileMaking = Static<typeof ProfileMakingSchema>;
export type ProfileRecord = Static<typeof ProfileSchema>;
