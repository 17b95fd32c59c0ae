// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller, WriteOptions } from "../operation.ts";
import type {
  CreateKeyData,
  CreateKeyResponse,
  GetKeyResponse,
  ListKeysData,
  ListKeysResponse,
  RevokeKeyResponse,
  RotateKeyData,
  RotateKeyResponse,
} from "./types.gen.ts";

export function keysOf(caller: Caller) {
  return {
    /** List keys, in force and revoked */
    list: (query?: ListKeysData["query"], options?: CallOptions) =>
      caller.list<ListKeysResponse["data"][number]>(
        { method: "GET", path: "/v1/keys", query },
        "cursor", options,
      ),

    /** Create a key; its secret is shown once. A narrowed key hands out only keys whose scopes are among its own, and names them for a person's key. */
    create: (body: CreateKeyData["body"], options?: WriteOptions) =>
      caller.send<CreateKeyResponse>(
        { method: "POST", path: "/v1/keys", body, isWrite: true },
        options,
      ),

    /** Read a key, without its secret */
    get: (keyId: string, options?: CallOptions) =>
      caller.send<GetKeyResponse>(
        { method: "GET", path: "/v1/keys/{keyId}", pathParameters: { keyId } },
        options,
      ),

    /** Give a key its next secret; the old one goes on working for a while. A narrowed key hands out only keys whose scopes are among its own, and names them for a person's key. */
    rotate: (keyId: string, body: RotateKeyData["body"], options?: WriteOptions) =>
      caller.send<RotateKeyResponse>(
        { method: "POST", path: "/v1/keys/{keyId}/rotate", pathParameters: { keyId }, body, isWrite: true },
        options,
      ),

    /** Revoke a key at once and for good, with both its secrets. Needs no If-Match: a lost key must go whatever has happened to its record. Twice is once. */
    revoke: (keyId: string, options?: WriteOptions) =>
      caller.send<RevokeKeyResponse>(
        { method: "POST", path: "/v1/keys/{keyId}/revoke", pathParameters: { keyId }, isWrite: true },
        options,
      ),
  };
}
