import type { FastifyRequest } from "fastify";
import { Problem } from "../problems/problem.ts";
import type { Role } from "./scopes.ts";

/** Who calls: a key in force and its role. */
export type Caller = { readonly keyId: string; readonly role: Role };

declare module "fastify" {
  interface FastifyRequest {
    /** Null where no valid key came. */
    caller: Caller | null;
  }
}

/** The caller of a route that needs one. */
export function callerOf({ caller }: FastifyRequest): Caller {
  if (caller === null) throw new Problem("key-missing", "Send a key as a bearer token.", CHALLENGE);
  return caller;
}

/** What a 401 asks for. RFC 6750. */
export const CHALLENGE = { headers: { "WWW-Authenticate": 'Bearer realm="rimwise"' } };
