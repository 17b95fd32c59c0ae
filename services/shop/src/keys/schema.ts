import Type, { type Static } from "typebox";
import { idField, keptFields, nameField } from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { ref } from "../http/reference.ts";
import type { Kept } from "../store/records.ts";
import { ROLES, type Role } from "./scopes.ts";

/** A key as it is kept. The key itself is not: only its digest. */
export type KeyRecord = Kept & {
  readonly name: string;
  readonly role: Role;
  readonly keySha256: string;
  readonly revokedAt?: string;
};

const role = Type.Enum([...ROLES], {
  type: "string",
  description: "What the caller may do: a manager everything, an instructor all but keys, a member read.",
});

export const NewKeySchema = Type.Object(
  { name: nameField("Bench 3 tablet"), role },
  { $id: "NewKey", description: "A key to create.", additionalProperties: false },
);

const shownFields = {
  id: idField("key"),
  name: nameField("Bench 3 tablet"),
  role,
  revokedAt: Type.Optional(Type.String({ format: "date-time", description: "Since when it opens nothing." })),
  ...keptFields,
};

export const KeySchema = Type.Object(shownFields, {
  $id: "Key",
  description: "A key without its secret.",
  additionalProperties: false,
});

export const CreatedKeySchema = Type.Object(
  {
    ...shownFields,
    key: Type.String({
      description: "The whole key, to send as a bearer token. Shown this once, never again.",
    }),
  },
  { $id: "CreatedKey", description: "A new key with its secret.", additionalProperties: false },
);

export const KeyPageSchema = pageSchema("KeyPage", ref(KeySchema), "Keys, oldest first.");

export type NewKey = Static<typeof NewKeySchema>;

/** What may be told of a key. */
export function shownKey({ keySha256: _, ...shown }: KeyRecord): Omit<KeyRecord, "keySha256"> {
  return shown;
}
