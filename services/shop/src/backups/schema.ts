import Type, { type Static } from "typebox";
import { hashField } from "../events/head-schema.ts";
import { ref } from "../http/reference.ts";

const manifestFields = {
  format: Type.Literal(1, { description: "How the backup is laid out." }),
  createdAt: Type.String({ format: "date-time", description: "When it was made, UTC." }),
  serviceVersion: Type.String({ description: "Version of the service that made it." }),
  databaseLevel: Type.String({ description: "Name of the last migration applied to the database." }),
  records: Type.Record(Type.String(), Type.Integer({ minimum: 0 }), {
    description: "How many records of each kind are in it.",
  }),
  events: Type.Integer({ minimum: 0, description: "How many events are in it." }),
  head: Type.Optional(
    Type.Object(
      {
        sequence: Type.Integer({ minimum: 1, description: "Sequence of the latest event." }),
        hash: hashField("Hash of that event, which covers all before it."),
      },
      {
        description:
          "The end of the history. Kept elsewhere and given to `POST /v1/events/verify`, it exposes a history whose end was cut off.",
        additionalProperties: false,
      },
    ),
  ),
  signingKeyIds: Type.Array(Type.String(), {
    description: "The `kid` of each signing key that is in it, oldest first.",
  }),
  hasSealingKey: Type.Optional(
    Type.Boolean({
      description:
        "Whether it has the key that opens the signing keys. It does when that is in a file; without it, keep RIMWISE_SEALING_KEY elsewhere. Absent of backups from before signing keys were sealed: those have the keys themselves.",
    }),
  ),
};

/** What a backup says of itself. */
export const ManifestSchema = Type.Object(manifestFields, { additionalProperties: false });

export const BackupSchema = Type.Object(
  {
    name: Type.String({ description: "Name of its file in the backup folder." }),
    sizeBytes: Type.Integer({ minimum: 0, description: "Size of its file." }),
    ...manifestFields,
  },
  {
    $id: "Backup",
    description: "A backup of the whole shop, in the service's backup folder.",
    additionalProperties: false,
  },
);

export const BackupListSchema = Type.Object(
  { data: Type.Array(ref(BackupSchema), { description: "Backups, oldest first." }) },
  { $id: "BackupList", description: "What is in the backup folder.", additionalProperties: false },
);

export type Manifest = Static<typeof ManifestSchema>;
export type Backup = Static<typeof BackupSchema>;
