import Type from "typebox";
import { idField, keptFields, referenceField } from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { ref } from "../http/reference.ts";
import type { Kept } from "../store/records.ts";

export const IMAGE_TYPES = ["image/jpeg", "image/png", "image/webp"] as const;

export type ImageType = (typeof IMAGE_TYPES)[number];

export type PhotographRecord = Kept & {
  readonly bitId: string;
  readonly personId?: string;
  readonly mediaType: ImageType;
  readonly caption?: string;
  readonly sha256: string;
  readonly bytes: Buffer;
};

export const PhotographSchema = Type.Object(
  {
    id: idField("photograph"),
    bitId: Type.String({ description: "The bit." }),
    personId: Type.Optional(referenceField("who took it")),
    mediaType: Type.Enum([...IMAGE_TYPES], { type: "string", description: "What the bytes are." }),
    caption: Type.Optional(Type.String({ maxLength: 200, description: "What it shows." })),
    sha256: Type.String({ pattern: "^[0-9a-f]{64}$", description: "SHA-256 of the bytes." }),
    sizeBytes: Type.Integer({ minimum: 1, description: "How many bytes." }),
    ...keptFields,
  },
  { $id: "Photograph", description: "A photograph of a bit.", additionalProperties: false },
);

export const PhotographPageSchema = pageSchema(
  "PhotographPage",
  ref(PhotographSchema),
  "Photographs, oldest first.",
);

/** The components this resource answers and takes. */
export const PHOTOGRAPH_SCHEMAS = [PhotographSchema, PhotographPageSchema];
