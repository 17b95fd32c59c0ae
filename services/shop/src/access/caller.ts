import type { FastifyRequest } from "fastify";
import { Problem } from "../problems/problem.ts";
import type { Kind } from "../store/kind.ts";
import type { RecordQueries, RecordView } from "../store/record-queries.ts";
import type { Mark } from "../store/store.ts";
import { holdsScope, isStaff, type Role, type Scope } from "./scopes.ts";

/** Who calls: a key in force, its role, and the person it belongs to if it is a person's. */
export type Caller = {
  readonly keyId: string;
  readonly role: Role;
  readonly personId?: string;
  readonly scopes?: readonly Scope[];
};

/**
 * Gives who calls with an Authorization header, at the moment it is asked, for as long as the store's mark is this one; null when the
 * key has expired. Undefined if that was not looked up since the last commit.
 */
export type RecallCaller = (mark: Mark, authorization: string) => (() => Caller | null) | undefined;

declare module "fastify" {
  interface FastifyRequest {
    /** Null when no valid key came. */
    caller: Caller | null;
    /** The store's mark when it was found out who calls; undefined when no key came. */
    mark: Mark | undefined;
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
 * The person in whose name somebody acts who is not in charge, or undefined for staff, who act for anybody. A key that
 * belongs to nobody is refused: nothing could be in its own name.
 */
export function ownPersonOnly(request: FastifyRequest): string | undefined {
  const { role, personId } = callerOf(request);
  if (isStaff(role)) return undefined;
  if (personId === undefined) {
    throw new Problem(
      "person-needed",
      "This key belongs to no person. Use the key of the member themselves.",
    );
  }
  return personId;
}

/** The person who signs or issues something: a program does not. */
export function requirePerson(request: FastifyRequest, why: string): string {
  const { personId } = callerOf(request);
  if (personId === undefined) throw new Problem("person-needed", why);
  return personId;
}

/** Who does something, and whether they are in charge of others: the person, or the program by its key. */
export function actorOf(request: FastifyRequest): { readonly by: string; readonly isByStaff: boolean } {
  const { role, personId, keyId } = callerOf(request);
  return { by: personId ?? keyId, isByStaff: isStaff(role) };
}

/** The person a write is about: a member may name only themselves, staff anybody or nobody. */
export function personAsked(request: FastifyRequest, personId: string | undefined): string | undefined {
  const own = ownPersonOnly(request);
  if (own !== undefined && personId !== undefined && personId !== own) {
    throw new Problem("not-yours", "Ask in your own name, or ask somebody in charge.");
  }
  return own ?? personId;
}

/** The records of a kind as far as the caller may see them: what else there is does not exist for them. */
export function visibleTo<K extends Kind>(request: FastifyRequest, queries: RecordQueries<K>): RecordView<K> {
  if (queries.seenBy === undefined) return queries;
  const own = ownPersonOnly(request);
  return own === undefined ? queries : queries.seenBy(own);
}

/** Of what `visibleTo` gives, whose view it is: the id of the one person who sees it so, or empty when everybody does who may ask. */
export function viewerOf<K extends Kind>(request: FastifyRequest, { seenBy }: RecordQueries<K>): string {
  return seenBy === undefined ? "" : (ownPersonOnly(request) ?? "");
}

/** What a 401 asks for. RFC 6750. */
export const CHALLENGE = { headers: { "WWW-Authenticate": 'Bearer realm="rimwise"' } };
