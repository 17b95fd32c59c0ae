import type { FastifyRequest } from "fastify";
import type { App } from "../http/app-type.ts";
import { sharedInTurn } from "../http/shared-in-turn.ts";
import type { PersonRecord } from "../people/schema.ts";
import { Problem } from "../problems/problem.ts";
import { type Caller, CHALLENGE, callerOf, mayDo } from "./caller.ts";
import { isPassphrase, keyDigest, matchesDigest, readKeyText } from "./key-text.ts";
import type { KeyReads } from "./reads.ts";
import type { KeyRecord } from "./schema.ts";

const BEARER = /^Bearer +(\S+)$/i;

/** Whether the caller of an open request may still do what its route asks for. */
export type StillAllowed = (request: FastifyRequest) => Promise<boolean>;

type Sources = {
  readonly keys: Pick<KeyReads, "find" | "findByDigest">;
  readonly people: { readonly find: (id: string) => Promise<PersonRecord | undefined> };
  readonly now: () => Date;
};

/**
 * Finds out who calls, and refuses nobody yet: the rate limit counts bad keys too. The function it returns asks again, for
 * an answer that goes on: whether the caller of a request still holds its route's scope.
 */
export function authenticateCallers(app: App, sources: Sources): StillAllowed {
  // A program asks for many things at once, with one key.
  const shared: Sources = {
    keys: { find: sharedInTurn(sources.keys.find), findByDigest: sharedInTurn(sources.keys.findByDigest) },
    people: { find: sharedInTurn(sources.people.find) },
    now: sources.now,
  };
  app.decorateRequest("caller", null);
  app.addHook("onRequest", async (request) => {
    request.caller = await callerFrom(request.headers.authorization, shared);
  });
  return async ({ headers, routeOptions }) => {
    const caller = await callerFrom(headers.authorization, sources);
    const { scope } = routeOptions.config;
    return scope === "public" || (caller !== null && scope !== undefined && mayDo(caller, scope));
  };
}

/** Refuses callers without a valid key (401) and keys without the route's scope (403). */
export function authorizeCallers(app: App): void {
  app.addHook("onRequest", async (request) => {
    const { scope } = request.routeOptions.config;
    if (scope === undefined || scope === "public") return;
    if (request.caller === null && request.headers.authorization !== undefined) {
      throw new Problem("key-not-valid", "It is mistyped, unknown, expired or revoked.", CHALLENGE);
    }
    const caller = callerOf(request);
    if (mayDo(caller, scope)) return;
    throw new Problem("scope-missing", `This key, in the role ${caller.role}, does not hold ${scope}.`);
  });
}

async function callerFrom(authorization: string | undefined, sources: Sources): Promise<Caller | null> {
  const [, token = ""] = BEARER.exec(authorization ?? "") ?? [];
  const record = await recordFor(token, sources.keys);
  return record !== undefined && opensNow(record, token, sources.now().toISOString())
    ? callerWith(record, sources)
    : null;
}

async function recordFor(token: string, keys: Sources["keys"]): Promise<KeyRecord | undefined> {
  if (isPassphrase(token)) return keys.findByDigest(keyDigest(token));
  const key = readKeyText(token);
  return key && keys.find(key.keyId);
}

function opensNow(key: KeyRecord, token: string, at: string): boolean {
  if (key.revokedAt !== undefined) return false;
  if (key.expiresAt !== undefined && key.expiresAt <= at) return false;
  if (matchesDigest(token, key.keySha256)) return true;
  const { previousSha256, previousUntil = "" } = key;
  return previousSha256 !== undefined && previousUntil > at && matchesDigest(token, previousSha256);
}

/** A person's key has the role that the person has now, and none once they have left. */
async function callerWith(key: KeyRecord, { people }: Sources): Promise<Caller | null> {
  const narrowed = key.scopes && { scopes: key.scopes };
  if (key.personId === undefined) return key.role ? { keyId: key.id, role: key.role, ...narrowed } : null;
  const person = await people.find(key.personId);
  if (person?.state !== "active") return null;
  return { keyId: key.id, role: person.role, personId: person.id, ...narrowed };
}
