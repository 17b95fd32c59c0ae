import Type, { type Static } from "typebox";
import { hashField } from "../events/head-schema.ts";
import { idField, keptFields } from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { ref } from "../http/reference.ts";

/** `typ` of the signed statement, which says what it is (RFC 7515, section 4.1.9). */
export const STATEMENT_TYPE = "rimwise-checkpoint+jws";

const CAUSES = ["asked", "events", "hour", "new-key"] as const;

const stated = {
  sequence: Type.Integer({ minimum: 1, description: "Sequence of the latest event." }),
  hash: hashField("Hash of that event, which covers all before it."),
};

export const CheckpointSchema = Type.Object(
  {
    id: idField("checkpoint"),
    ...stated,
    cause: Type.Enum([...CAUSES], {
      type: "string",
      description:
        "Why it was made: somebody asked, many events had come, an hour had passed, or the service signs with a new key.",
    }),
    signingKeyId: Type.String({ description: "The `kid` of the key that signed it." }),
    statement: Type.String({
      description: `\`sequence\`, \`hash\` and \`at\` signed as a compact JWS (RFC 7515), \`typ\` \`${STATEMENT_TYPE}\`. Kept elsewhere, it exposes a history that was rewritten.`,
    }),
    ...keptFields,
  },
  {
    $id: "Checkpoint",
    description: "A signed statement of how far the history reached.",
    additionalProperties: false,
  },
);

export const CheckpointPageSchema = pageSchema(
  "CheckpointPage",
  ref(CheckpointSchema),
  "Checkpoints, oldest first.",
);

export type CheckpointRecord = Static<typeof CheckpointSchema>;
export type CheckpointCause = CheckpointRecord["cause"];

/** What a checkpoint's signature covers. `at` is when it was made. */
export type Statement = Pick<CheckpointRecord, "sequence" | "hash"> & { readonly at: string };
