import Type, { type Static } from "typebox";
import { ref } from "../http/reference.ts";
import type { PublicKey } from "./known-keys.ts";

const KEY_BYTES = "^[A-Za-z0-9_-]{43}$";

/** A public key in the form of RFC 7517 and RFC 8037. */
export const JsonWebKeySchema = Type.Object(
  {
    kty: Type.Literal("OKP"),
    crv: Type.Literal("Ed25519"),
    alg: Type.Literal("EdDSA"),
    use: Type.Literal("sig"),
    kid: Type.String({ description: "Thumbprint of the key (RFC 7638); what it signed names it." }),
    x: Type.String({ pattern: KEY_BYTES, description: "The public key, in base64url." }),
    retiredAt: Type.Optional(
      Type.String({
        format: "date-time",
        description: "Since when it signs nothing: refuse what it signed with a later `iat`.",
      }),
    ),
    compromisedAt: Type.Optional(
      Type.String({
        format: "date-time",
        description:
          "Since when it is known to be in other hands: refuse all that it signed, whatever its `iat`.",
      }),
    ),
  },
  {
    $id: "JsonWebKey",
    description: "A public signing key (RFC 7517, RFC 8037).",
    additionalProperties: false,
  },
);

export const JsonWebKeySetSchema = Type.Object(
  { keys: Type.Array(ref(JsonWebKeySchema), { description: "The current key and all earlier ones." }) },
  {
    $id: "JsonWebKeySet",
    description: "The keys that this service's signatures are checked with.",
    additionalProperties: false,
  },
);

const SigningKeySchema = Type.Object(
  {
    id: Type.String({ description: "The key's `kid`." }),
    isCurrent: Type.Boolean({ description: "Whether it is what the service signs with now." }),
    createdAt: Type.String({ format: "date-time", description: "Since when it has been there, UTC." }),
    retiredAt: Type.Optional(
      Type.String({ format: "date-time", description: "Since when it signs nothing." }),
    ),
    compromisedAt: Type.Optional(
      Type.String({ format: "date-time", description: "Since when nothing that it signed counts." }),
    ),
    publicKey: ref(JsonWebKeySchema),
  },
  { $id: "SigningKey", description: "A key the service signs with, or did.", additionalProperties: false },
);

export const SigningKeyListSchema = Type.Object(
  { data: Type.Array(ref(SigningKeySchema), { description: "Signing keys, oldest first." }) },
  { $id: "SigningKeyList", description: "All signing keys.", additionalProperties: false },
);

export const SIGNING_SCHEMAS = [
  JsonWebKeySchema,
  JsonWebKeySetSchema,
  SigningKeySchema,
  SigningKeyListSchema,
];

export type JsonWebKey = Static<typeof JsonWebKeySchema>;
export type SigningKey = Static<typeof SigningKeySchema>;

/** A public key as those who check signatures read it. */
export function jsonWebKey({ id, x, retiredAt, compromisedAt }: PublicKey): JsonWebKey {
  return {
    ...({ kty: "OKP", crv: "Ed25519", alg: "EdDSA", use: "sig", kid: id, x } as const),
    ...(retiredAt !== undefined && { retiredAt }),
    ...(compromisedAt !== undefined && { compromisedAt }),
  };
}
