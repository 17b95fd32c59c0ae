import type { FastifyRequest } from "fastify";
import type { MakeCheckpoint } from "../checkpoints/make.ts";
import type { Outcome } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { requireFound } from "../http/read-routes.ts";
import { ref } from "../http/reference.ts";
import { askedOf, type Doors, schemaOf } from "../http/routes.ts";
import { stampOf } from "../http/write.ts";
import { signingKeyKind } from "./kind.ts";
import type { PublicKey } from "./known-keys.ts";
import {
  JsonWebKeySetSchema,
  jsonWebKey,
  SIGNING_SCHEMAS,
  type SigningKey,
  SigningKeyListSchema,
} from "./schema.ts";
import type { KeyChange, Signer } from "./signer.ts";

type Parts = { readonly signer: Signer; readonly makeCheckpoint: MakeCheckpoint };

/** RFC 7517, section 8.5.2. */
const JWK_SET = "application/jwk-set+json";

export function signingRoutes(app: App, { answerOnce, now }: Doors, { signer, makeCheckpoint }: Parts): void {
  for (const schema of SIGNING_SCHEMAS) app.addSchema(schema);

  /** The keys change in one transaction with the checkpoint that the new one signs. */
  async function outcomeOf(
    request: FastifyRequest,
    change: (at: string) => Promise<KeyChange>,
  ): Promise<Outcome> {
    const stamp = stampOf(request, now());
    const { changes, signing, publicKeys } = await change(stamp.at);
    const checkpoint = await makeCheckpoint("new-key", stamp.at, signing);
    return {
      stamp,
      changes: [...changes, ...checkpoint.changes],
      expects: checkpoint.expects ?? [],
      status: 200,
      body: { data: shownKeys(publicKeys) },
    };
  }

  app.get(
    "/.well-known/jwks.json",
    {
      config: { scope: "public", operation: "act" },
      schema: {
        operationId: "getJsonWebKeySet",
        tags: ["signing"],
        summary: "Read the public keys that this service's signatures are checked with",
        response: {
          200: {
            description: "A JSON Web Key Set (RFC 7517).",
            content: { [JWK_SET]: { schema: ref(JsonWebKeySetSchema) } },
          },
        },
      },
    },
    async (_request, reply) =>
      reply.type(JWK_SET).send({ keys: (await signer.publicKeys()).map(jsonWebKey) }),
  );

  app.get(
    "/v1/signing-keys",
    {
      config: { scope: "keys:manage", operation: "act" },
      schema: {
        operationId: "listSigningKeys",
        tags: ["signing"],
        summary: "List the keys the service signs with, current and earlier",
        response: { 200: ref(SigningKeyListSchema) },
      },
    },
    async () => ({ data: shownKeys(await signer.publicKeys()) }),
  );

  app.post(
    "/v1/signing-keys/rotate",
    {
      config: { scope: "keys:manage", operation: "act" },
      schema: {
        operationId: "rotateSigningKeys",
        tags: ["signing"],
        summary: "Sign with a new key from now on",
        description:
          "The earlier key stays published, so that what it signed can be checked; its private half is forgotten. The new key signs a checkpoint first, whose event says who did this and why.",
        response: { 200: ref(SigningKeyListSchema) },
      },
    },
    (request, reply) => answerOnce(request, reply, () => outcomeOf(request, signer.rotate)),
  );

  const compromise = {
    scope: "keys:manage",
    tag: "signing",
    path: "/v1/signing-keys/:signingKeyId/compromise",
    operationId: "compromiseSigningKey",
    summary: "Say that a signing key is in other hands: nothing that it signed counts any more",
  } as const;
  app.post(
    compromise.path,
    {
      config: { scope: compromise.scope, operation: "act" },
      schema: schemaOf(compromise, { response: { 200: ref(SigningKeyListSchema) } }),
    },
    (request, reply) => {
      const { params } = askedOf<typeof compromise.path, undefined, undefined>(request, now().toISOString());
      return answerOnce(request, reply, () =>
        outcomeOf(request, async (at) =>
          requireFound(signingKeyKind, params.signingKeyId, await signer.compromise(params.signingKeyId, at)),
        ),
      );
    },
  );
}

function shownKeys(keys: readonly PublicKey[]): SigningKey[] {
  return keys.map((key) => {
    const { id, createdAt, retiredAt, compromisedAt } = key;
    const isCurrent = retiredAt === undefined;
    const ends = { ...(retiredAt && { retiredAt }), ...(compromisedAt && { compromisedAt }) };
    return { id, isCurrent, createdAt, ...ends, publicKey: jsonWebKey(key) };
  });
}
