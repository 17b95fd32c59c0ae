import type { FastifyRequest } from "fastify";
import { Problem } from "../problems/problem.ts";
import { holdsScope, type Role, type Scope } from "./scopes.ts";

/** Who calls: a key in force, its role, and the person it belongs to where it is a person's. */
export type Caller = {
  readonly keyId: string;
  readonly role: Role;
  readonly personId?: string;
  readonly scopes?: readonly Scope[];
};

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

/** Whether a caller may do what a scope allows: the role must, and a narrowed key must name it. */
export function mayDo({ role, scopes }: Caller, scope: Scope): boolean {
  return holdsScope(role, scope) && (scopes === undefined || scopes.includes(scope));
}

/**
 * The person in whose name a member acts, or undefined for staff, who act for anybody. A member's key that belongs to
 * nobody is refused: nothing could be in its own name.
 */
export function ownPersonOnly(request: FastifyRequest): string | undefined {
  const { role, personId } = callerOf(request);
  if (role !== "member") return undefined;
  if (personId === undefined) {
    throw new Problem(
      "person-needed",
      "This key belongs to no person. Use the key of the member themselves.",
    );
  }
  return personId;
}

/** What a 401 asks for. RFC 6750. */
export const CHALLENGE = { headers: { "WWW-Authenticate": 'Bearer realm="rimwise"' } };
