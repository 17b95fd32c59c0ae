import Type, { type Static } from "typebox";
import { ROLES } from "../access/scopes.ts";
import {
  externalIdField,
  idField,
  keptFields,
  momentField,
  nameField,
  notesField,
  type PatchOf,
  patchSchema,
} from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { ref } from "../http/reference.ts";

const roleField = Type.Enum([...ROLES], { type: "string", description: "What they may do." });
const stateField = Type.Enum(["active", "left"], {
  type: "string",
  description: "The keys of somebody who has left open nothing.",
});

const personFields = {
  name: nameField("Robin, second bench"),
  role: roleField,
  externalId: Type.Optional(externalIdField),
  notes: Type.Optional(notesField),
};

export const NewPersonSchema = Type.Object(personFields, {
  $id: "NewPerson",
  description: "Somebody to enter.",
  additionalProperties: false,
});

const changeable = Type.Object({ ...personFields, state: stateField });

export const PersonChangeSchema = patchSchema<Static<typeof changeable>>(
  "PersonChange",
  changeable,
  "What to change of a person.",
);

export const PersonSchema = Type.Object(
  {
    id: idField("person"),
    ...personFields,
    state: stateField,
    erasedAt: Type.Optional(momentField("Since when their name and notes are erased.")),
    ...keptFields,
  },
  { $id: "Person", description: "Somebody who uses the shop.", additionalProperties: false },
);

/** A person as they are kept. The salt makes the digest of their name in the history one that cannot be guessed. */
export const PersonRecordSchema = Type.Object({
  ...PersonSchema.properties,
  salt: Type.Optional(Type.String()),
});

export const PersonErasureSchema = Type.Object(
  {
    person: ref(PersonSchema),
    stays: Type.Array(Type.String(), {
      description:
        "What of them stays, under their id alone, and where their name may still be found for a while.",
    }),
  },
  {
    $id: "PersonErasure",
    description: "Somebody whose name and notes were erased.",
    additionalProperties: false,
  },
);

export const PersonPageSchema = pageSchema("PersonPage", ref(PersonSchema), "People, oldest entry first.");

/** The components this resource answers and takes. */
export const PERSON_SCHEMAS = [
  NewPersonSchema,
  PersonChangeSchema,
  PersonSchema,
  PersonErasureSchema,
  PersonPageSchema,
];

export type NewPerson = Static<typeof NewPersonSchema>;
export type PersonChange = PatchOf<Static<typeof changeable>>;

export type Person = Static<typeof PersonSchema>;

/** Somebody who uses the shop. People are not removed: they leave, and what they did stays; their name can be erased. */
export type PersonRecord = Static<typeof PersonRecordSchema>;

/** What is shown of a person. */
export function shownPerson({ salt: _, ...shown }: PersonRecord): Person {
  return shown;
}
