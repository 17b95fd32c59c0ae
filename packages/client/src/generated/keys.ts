// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { AnyOptions, CallOptions, Caller, ConditionalOptions, Loose, WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { CreatedKey, Key, KeyRotation, ListKeysData, NewKey } from "./types.gen.ts";

/** Who may call, and what they may do. */
export interface KeysResource {
  /**
   * List keys, in force and revoked
   *
   * `GET /v1/keys`
   */
  list(query?: Loose<NonNullable<ListKeysData["query"]>>, options?: CallOptions): Pages<Key>;

  /**
   * Create a key; its secret is shown once
   *
   * A narrowed key hands out only keys whose scopes are among its own, and names them for a person's key.
   *
   * `POST /v1/keys`
   */
  create(body: NewKey, options?: WriteOptions): Answer<CreatedKey>;

  /**
   * Read a key, without its secret
   *
   * `GET /v1/keys/{keyId}`
   */
  get(keyId: string, options: ConditionalOptions): Answer<Key | NotModified>;
  /**
   * Read a key, without its secret
   *
   * `GET /v1/keys/{keyId}`
   */
  get(keyId: string, options?: CallOptions): Answer<Key>;

  /**
   * Give a key its next secret; the old one goes on working for a while
   *
   * A narrowed key hands out only keys whose scopes are among its own, and names them for a person's key.
   *
   * `POST /v1/keys/{keyId}/rotate`
   */
  rotate(keyId: string, body: KeyRotation, options?: WriteOptions): Answer<CreatedKey>;

  /**
   * Revoke a key at once and for good, with both its secrets
   *
   * Needs no If-Match: a lost key must go whatever has happened to its record. Twice is once.
   *
   * `POST /v1/keys/{keyId}/revoke`
   */
  revoke(keyId: string, options?: WriteOptions): Answer<Key>;
}

export function keysOf(caller: Caller): KeysResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/keys", query }, options),
    create: (body, options) =>
      caller.send({ method: "POST", path: "/v1/keys", body }, options),
    get: (keyId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/keys/{}", ids: [keyId] }, options),
    rotate: (keyId, body, options) =>
      caller.send({ method: "POST", path: "/v1/keys/{}/rotate", ids: [keyId], body }, options),
    revoke: (keyId, options) =>
      caller.send({ method: "POST", path: "/v1/keys/{}/revoke", ids: [keyId] }, options),
  };
}
