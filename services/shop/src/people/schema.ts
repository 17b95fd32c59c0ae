import Type, { type Static } from "typebox";
import { ROLES } from "../access/scopes.ts";
import { idField, keptFields, nameField, notesField, type PatchOf, patchSchema } from "../http/fields.ts";
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
  { id: idField("person"), ...personFields, state: stateField, ...keptFields },
  { $id: "Person", description: "Somebody who uses the shop.", additionalProperties: false },
);

export const PersonPageSchema = pageSchema("PersonPage", ref(PersonSchema), "People, oldest entry first.");

/** The components this resource answers and takes. */
export const PERSON_SCHEMAS = [NewPersonSchema, PersonChangeSchema, PersonSchema, PersonPageSchema];

export type NewPerson = Static<typeof NewPersonSchema>;
export type PersonChange = PatchOf<Static<typeof changeable>>;

/** Somebody who uses the shop. People are not removed: they leave, and what they did stays. */
export type PersonRecord = Static<typeof PersonSchema>;
