import type { FastifyRequest } from "fastify";
import { type Caller, CHALLENGE, keyMissing, mayDo, type RecallCaller } from "../access/caller.ts";
import type { App } from "../http/app-type.ts";
import { remembered } from "../http/remembered.ts";
import { people, personKind } from "../people/kind.ts";
import type { PersonRecord } from "../people/schema.ts";
import { Problem } from "../problems/problem.ts";
import type { Kind } from "../store/kind.ts";
import type { Question } from "../store/query.ts";
import type { Mark, Store } from "../store/store.ts";
import { isPassphrase, keyDigest, matchesDigest, readKeyText } from "./key-text.ts";
import { keyKind } from "./kind.ts";
import { keys } from "./reads.ts";
import type { KeyRecord } from "./schema.ts";

const BEARER = /^Bearer +(\S+)$/i;

/** Whether the caller of an open request may still do what its route asks for. */
export type StillAllowed = (request: FastifyRequest) => Promise<boolean>;

type Parts = Pick<Store, "answer" | "mark" | "hearSteps"> & { readonly now: () => Date };

/** What a token opens: a key of this shop by its text, with whose it is if it is a person's, or nothing. */
type Opened =
  | { readonly key: KeyRecord; readonly text: string; readonly person: PersonRecord | undefined }
  | { readonly key?: undefined };

/** Kinds of what tells what a token opens. */
const RESTS_ON: readonly Kind[] = [keyKind, personKind];

/** Finds out who calls, and refuses nobody yet: the rate limit counts bad keys too. */
export function authenticateCallers(
  app: App,
  { answer, mark, hearSteps, now }: Parts,
): {
  /** Asks again, for an answer that goes on: whether the caller of a request still holds its route's scope. */
  readonly isStillAllowed: StillAllowed;
  readonly recallCaller: RecallCaller;
} {
  const opened = remembered<Opened>();
  hearSteps?.(({ from, to, types }) => {
    if (!RESTS_ON.some(({ type }) => types.has(type))) opened.advance(from, to);
  });
  const callerNow = (found: Opened) => callerWith(found, () => now().toISOString());
  app.decorateRequest("caller", null);
  app.decorateRequest("mark", undefined);

  /** Whose token it is, if that is known at this mark. */
  function recognize(request: FastifyRequest, token: string, at: Mark): boolean {
    request.mark = at;
    const known = opened.recall(at, token);
    if (known !== undefined) request.caller = callerNow(known);
    return known !== undefined;
  }

  async function findOut(request: FastifyRequest, token: string, mark: Mark | Promise<Mark>): Promise<void> {
    const at = await mark;
    if (recognize(request, token, at)) return;
    const found = await answer(openedBy(token));
    opened.keep(at, token, found);
    request.caller = callerNow(found);
  }

  app.addHook("onRequest", (request, _reply, done) => {
    const token = tokenIn(request.headers.authorization);
    if (token === undefined) return done();
    const at = mark();
    if (typeof at !== "object" && recognize(request, token, at)) return done();
    findOut(request, token, at).then(() => done(), done);
  });
  const isStillAllowed: StillAllowed = async (request) => {
    const { scope } = request.routeOptions.config;
    if (scope === "public") return true;
    const token = tokenIn(request.headers.authorization);
    const caller = token === undefined ? null : callerNow(await answer(openedBy(token)));
    return caller !== null && scope !== undefined && mayDo(caller, scope);
  };
  const recallCaller: RecallCaller = (at, authorization) => {
    const token = tokenIn(authorization);
    const known = token === undefined ? undefined : opened.recall(at, token);
    return known && (() => callerNow(known));
  };
  return { isStillAllowed, recallCaller };
}

/** Refuses callers without a valid key (401) and keys without the route's scope (403). */
export function authorizeCallers(app: App): void {
  app.addHook("onRequest", (request, _reply, done) => {
    done(refusalOf(request));
  });
}

function refusalOf({ routeOptions, caller, headers }: FastifyRequest): Problem | undefined {
  const { scope } = routeOptions.config;
  if (scope === undefined || scope === "public") return undefined;
  if (caller === null) {
    if (headers.authorization === undefined) return keyMissing();
    return new Problem("key-not-valid", "It is mistyped, unknown, expired or revoked.", CHALLENGE);
  }
  if (mayDo(caller, scope)) return undefined;
  return new Problem("scope-missing", `This key, in the role ${caller.role}, does not hold ${scope}.`);
}

function tokenIn(authorization = ""): string | undefined {
  return BEARER.exec(authorization)?.[1];
}

function* openedBy(token: string): Question<Opened> {
  const read = isPassphrase(token) ? { text: token } : readKeyText(token);
  if (read === undefined) return {};
  const { keyId, text } = read;
  const key = yield* keyId === undefined ? keys.findByDigest(keyDigest(text)) : keys.find(keyId);
  if (key === undefined || !isSecretOf(key, text)) return {};
  return { key, text, person: key.personId === undefined ? undefined : yield* people.find(key.personId) };
}

function isSecretOf({ keySha256, previousSha256 }: KeyRecord, text: string): boolean {
  return (
    matchesDigest(text, keySha256) || (previousSha256 !== undefined && matchesDigest(text, previousSha256))
  );
}

/** A person's key has the role that the person has now, and none once they have left. */
function callerWith(found: Opened, at: () => string): Caller | null {
  if (found.key === undefined) return null;
  const { key, person, text } = found;
  if (!opensAt(key, text, at)) return null;
  const narrowed = key.scopes && { scopes: key.scopes };
  if (key.personId === undefined) return key.role ? { keyId: key.id, role: key.role, ...narrowed } : null;
  if (person?.state !== "active") return null;
  return { keyId: key.id, role: person.role, personId: person.id, ...narrowed };
}

/** Whether a secret of a key opens anything at a moment: the one before the last rotation does so only for a while. */
function opensAt(key: KeyRecord, text: string, at: () => string): boolean {
  if (key.revokedAt !== undefined) return false;
  if (key.expiresAt !== undefined && key.expiresAt <= at()) return false;
  const { previousSha256, previousUntil = "" } = key;
  if (previousSha256 === undefined || previousUntil > at()) return true;
  return matchesDigest(text, key.keySha256);
}
