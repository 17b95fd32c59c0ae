import Type, { type Static } from "typebox";
import { PROGRAM_ROLES, SCOPE_NAMES } from "../access/scopes.ts";
import { idField, keptFields, momentField, nameField, referenceField } from "../http/fields.ts";
import { manyCreatedSchema, manySchema } from "../http/many-schema.ts";
import { pageSchema } from "../http/paging.ts";
import { ref } from "../http/reference.ts";
import { NewPersonSchema, PersonSchema } from "../people/schema.ts";

const role = Type.Enum([...PROGRAM_ROLES], { type: "string", description: "What a program's key may do." });

const keyFields = {
  name: nameField("Bench 3 tablet"),
  role: Type.Optional(role),
  personId: Type.Optional(referenceField("the person it belongs to; the key has that person's role")),
  scopes: Type.Optional(
    Type.Array(Type.Enum(SCOPE_NAMES, { type: "string" }), {
      minItems: 1,
      maxItems: SCOPE_NAMES.length,
      uniqueItems: true,
      description: "Nothing but these, and only as far as the role goes. Default: all of the role's.",
    }),
  ),
  expiresAt: Type.Optional(momentField("From when it no longer works.")),
};

export const NewKeySchema = Type.Object(keyFields, {
  $id: "NewKey",
  description: "A key to create: either a program's, with a `role`, or a person's, with a `personId`.",
  additionalProperties: false,
});

const MOST_OVERLAP_MINUTES = 7 * 24 * 60;
const USUAL_OVERLAP_MINUTES = 24 * 60;

export const KeyRotationSchema = Type.Object(
  {
    overlapMinutes: Type.Optional(
      Type.Integer({
        minimum: 0,
        maximum: MOST_OVERLAP_MINUTES,
        description: `How long the old secret still works. Default: ${USUAL_OVERLAP_MINUTES}, one day.`,
      }),
    ),
  },
  { $id: "KeyRotation", description: "How a key gets its next secret.", additionalProperties: false },
);

const shownFields = {
  id: idField("key"),
  ...keyFields,
  previousUntil: Type.Optional(momentField("Until when the secret before the last rotation still works.")),
  revokedAt: Type.Optional(momentField("Since when it no longer works.")),
  ...keptFields,
};

export const KeySchema = Type.Object(shownFields, {
  $id: "Key",
  description: "A key without its secret.",
  additionalProperties: false,
});

/** A key as it is kept: a person's, who has a role, or a program's with a role of its own. Its secret is not kept. */
export const KeyRecordSchema = Type.Object({
  ...shownFields,
  keySha256: Type.String(),
  /** Of the secret before the last rotation, which works until `previousUntil`. */
  previousSha256: Type.Optional(Type.String()),
});

export const CreatedKeySchema = Type.Object(
  {
    ...shownFields,
    key: Type.String({
      description: "The whole key, to send as a bearer token. Shown this once, never again.",
    }),
  },
  { $id: "CreatedKey", description: "A key with its new secret.", additionalProperties: false },
);

/** Most people of one request: a class, many times over. */
const MOST_NEW_PEOPLE = 500;

const NewPersonWithKeySchema = Type.Object(
  {
    ...NewPersonSchema.properties,
    key: Type.Optional(
      Type.Object(
        { name: keyFields.name, scopes: keyFields.scopes },
        { additionalProperties: false, description: "A key of their own to create with them." },
      ),
    ),
  },
  { $id: "NewPersonWithKey", description: "One of many people to enter.", additionalProperties: false },
);

const PersonWithKeySchema = Type.Object(
  {
    person: ref(PersonSchema),
    key: Type.Optional(ref(CreatedKeySchema)),
  },
  {
    $id: "PersonWithKey",
    description: "Somebody who was entered, with their new key.",
    additionalProperties: false,
  },
);

export const NewPeopleSchema = manySchema("NewPeople", NewPersonWithKeySchema, MOST_NEW_PEOPLE);
export const NewPeopleAnswerSchema = manyCreatedSchema("CreatedPeople", PersonWithKeySchema);

export const KeyPageSchema = pageSchema("KeyPage", ref(KeySchema), "Keys, oldest first.");

/** The components this resource answers and takes. */
export const KEY_SCHEMAS = [
  NewKeySchema,
  KeyRotationSchema,
  KeySchema,
  CreatedKeySchema,
  KeyPageSchema,
  NewPersonWithKeySchema,
  PersonWithKeySchema,
  NewPeopleSchema,
  NewPeopleAnswerSchema,
];

export type Key = Static<typeof KeySchema>;
export type KeyRecord = Static<typeof KeyRecordSchema>;
export type NewPersonWithKey = Static<typeof NewPersonWithKeySchema>;
export type PersonWithKey = Static<typeof PersonWithKeySchema>;
export type NewKey = Static<typeof NewKeySchema>;
export type KeyRotation = Static<typeof KeyRotationSchema>;

/** How long the old secret still works after a rotation, in minutes. */
export function overlapOf({ overlapMinutes = USUAL_OVERLAP_MINUTES }: KeyRotation): number {
  return overlapMinutes;
}

/** What is shown of a key. */
export function shownKey({ keySha256: _secret, previousSha256: _previous, ...shown }: KeyRecord): Key {
  return shown;
}
