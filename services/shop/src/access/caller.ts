import type { FastifyRequest } from "fastify";
import { Problem } from "../problems/problem.ts";
import { holdsScope, type Role, type Scope } from "./scopes.ts";

/** Who calls: a key in force, its role, and the person it belongs to if it is a person's. */
export type Caller = {
  readonly keyId: string;
  readonly role: Role;
  readonly personId?: string;
  readonly scopes?: readonly Scope[];
};

declare module "fastify" {
  interface FastifyRequest {
    /** Null when no valid key came. */
    caller: Caller | null;
  }
}

/** The caller of a route that needs one. */
export function callerOf({ caller }: FastifyRequest): Caller {
  if (caller === null) throw keyMissing();
  return caller;
}

/** The 401 for a request without a key. */
export function keyMissing(): Problem {
  return new Problem("key-missing", "Send a key as a bearer token.", CHALLENGE);
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

/** The person a request is about: a member may name only themselves, staff anybody or nobody. */
export function personAsked(request: FastifyRequest, personId: string | undefined): string | undefined {
  const own = ownPersonOnly(request);
  if (own !== undefined && personId !== undefined && personId !== own) {
    throw new Problem("not-yours", "Ask in your own name, or ask somebody in charge.");
  }
  return own ?? personId;
}

/** A record as far as the caller may see it: to a member, somebody else's does not exist. */
export function visibleRecord<Row extends { readonly personId?: string }>(
  request: FastifyRequest,
  record: Row | undefined,
): Row | undefined {
  const own = ownPersonOnly(request);
  return own === undefined || record?.personId === own ? record : undefined;
}

/** What a 401 asks for. RFC 6750. */
export const CHALLENGE = { headers: { "WWW-Authenticate": 'Bearer realm="rimwise"' } };
