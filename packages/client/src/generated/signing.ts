// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller, WriteOptions } from "../operation.ts";
import type {
  CompromiseSigningKeyResponse,
  GetJsonWebKeySetResponse,
  ListSigningKeysResponse,
  RotateSigningKeysResponse,
} from "./types.gen.ts";

export function signingOf(caller: Caller) {
  return {
    /** Read the public keys that this service's signatures are checked with */
    getJsonWebKeySet: (options?: CallOptions) =>
      caller.send<GetJsonWebKeySetResponse>(
        { method: "GET", path: "/.well-known/jwks.json", answers: ["application/jwk-set+json"] },
        options,
      ),

    /** List the keys the service signs with, current and earlier */
    listSigningKeys: (options?: CallOptions) =>
      caller.send<ListSigningKeysResponse>(
        { method: "GET", path: "/v1/signing-keys" },
        options,
      ),

    /** Sign with a new key from now on. The earlier key stays published, so that what it signed can be checked; its private half is forgotten. The new key signs a checkpoint first, whose event says who did this and why. */
    rotateSigningKeys: (options?: WriteOptions) =>
      caller.send<RotateSigningKeysResponse>(
        { method: "POST", path: "/v1/signing-keys/rotate", isWrite: true },
        options,
      ),

    /** Say that a signing key is in other hands: nothing that it signed counts any more */
    compromiseSigningKey: (signingKeyId: string, options?: WriteOptions) =>
      caller.send<CompromiseSigningKeyResponse>(
        { method: "POST", path: "/v1/signing-keys/{signingKeyId}/compromise", pathParameters: { signingKeyId }, isWrite: true },
        options,
      ),
  };
}
