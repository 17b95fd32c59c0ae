// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { CallOptions, Caller, WriteOptions } from "../operation.ts";
import type { JsonWebKeySet, SigningKeyList } from "./types.gen.ts";

/** The keys that the service's signatures are checked with. */
export interface SigningResource {
  /**
   * Read the public keys that this service's signatures are checked with
   *
   * `GET /.well-known/jwks.json`
   */
  getJsonWebKeySet(options?: CallOptions): Answer<JsonWebKeySet>;

  /**
   * List the keys the service signs with, current and earlier
   *
   * `GET /v1/signing-keys`
   */
  listKeys(options?: CallOptions): Answer<SigningKeyList>;

  /**
   * Sign with a new key from now on
   *
   * The earlier key stays published, so that what it signed can be checked; its private half is forgotten. The new key signs a checkpoint first, whose event says who did this and why.
   *
   * `POST /v1/signing-keys/rotate`
   */
  rotateKeys(options?: WriteOptions): Answer<SigningKeyList>;

  /**
   * Say that a signing key is in other hands: nothing that it signed counts any more
   *
   * `POST /v1/signing-keys/{signingKeyId}/compromise`
   */
  compromiseKey(signingKeyId: string, options?: WriteOptions): Answer<SigningKeyList>;
}

export function signingOf(caller: Caller): SigningResource {
  return {
    getJsonWebKeySet: (options) =>
      caller.send({ path: "/.well-known/jwks.json", answers: ["application/jwk-set+json"] }, options),
    listKeys: (options) =>
      caller.send({ path: "/v1/signing-keys" }, options),
    rotateKeys: (options) =>
      caller.send({ method: "POST", path: "/v1/signing-keys/rotate" }, options),
    compromiseKey: (signingKeyId, options) =>
      caller.send({ method: "POST", path: "/v1/signing-keys/{}/compromise", ids: [signingKeyId] }, options),
  };
}
