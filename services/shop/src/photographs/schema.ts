import Type, { type Static } from "typebox";
import { idField, keptFields, referenceField } from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { ref } from "../http/reference.ts";
import { COLUMN_KEYWORD } from "../store/columns.ts";

export const IMAGE_TYPES = ["image/jpeg", "image/png", "image/webp"] as const;

export type ImageType = (typeof IMAGE_TYPES)[number];

/** Greatest photograph. */
export const MOST_BYTES = 4 * 1024 * 1024;
/** Of base64, which is a third longer. What is only a little too large is refused by its bytes. */
const MOST_CHARACTERS = 2 * MOST_BYTES;

const mediaType = Type.Enum([...IMAGE_TYPES], { type: "string", description: "What the bytes are." });
const caption = Type.Optional(Type.String({ maxLength: 200, description: "What it shows." }));
const base64 = Type.String({
  minLength: 4,
  maxLength: MOST_CHARACTERS,
  contentEncoding: "base64",
  description: `the image in base64 (RFC 4648), at most ${MOST_BYTES / 1024 / 1024} MiB decoded`,
});

export const NewPhotographSchema = Type.Object(
  { mediaType, caption, base64 },
  { $id: "NewPhotograph", description: "A photograph of a bit.", additionalProperties: false },
);

export const PhotographSchema = Type.Object(
  {
    id: idField("photograph"),
    bitId: Type.String({ description: "The bit." }),
    personId: Type.Optional(referenceField("who took it")),
    mediaType,
    caption,
    sha256: Type.String({ pattern: "^[0-9a-f]{64}$", description: "SHA-256 of the bytes." }),
    ...keptFields,
  },
  {
    $id: "Photograph",
    description: "A photograph of a bit, without its bytes.",
    additionalProperties: false,
  },
);

/** A photograph as it is kept: with its bytes. */
export const PhotographRecordSchema = Type.Object({
  ...PhotographSchema.properties,
  bytes: Type.Unsafe<Buffer>({ [COLUMN_KEYWORD]: "bytes" }),
});

export const PhotographContentSchema = Type.Object(
  { mediaType, base64 },
  { $id: "PhotographContent", description: "A photograph itself.", additionalProperties: false },
);

export const PhotographPageSchema = pageSchema(
  "PhotographPage",
  ref(PhotographSchema),
  "Photographs, oldest first.",
);

/** The components this resource answers and takes. */
export const PHOTOGRAPH_SCHEMAS = [
  NewPhotographSchema,
  PhotographSchema,
  PhotographContentSchema,
  PhotographPageSchema,
];

export type Photograph = Static<typeof PhotographSchema>;
export type PhotographRecord = Static<typeof PhotographRecordSchema>;
export type NewPhotograph = Static<typeof NewPhotographSchema>;

/** What is shown of a photograph, and what its events say: all but the bytes. */
export function shownPhotograph({ bytes: _, ...shown }: PhotographRecord): Photograph {
  return shown;
}
