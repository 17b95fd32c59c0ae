import type { App } from "../http/app-type.ts";
import { Problem } from "../problems/problem.ts";
import { type Caller, CHALLENGE, callerOf } from "./caller.ts";
import { isPassphrase, keyDigest, matchesDigest, readKeyText } from "./key-text.ts";
import type { KeyReads } from "./reads.ts";
import { holdsScope } from "./scopes.ts";

const BEARER = /^Bearer +(\S+)$/i;

/** Finds out who calls, and refuses nobody yet: the rate limit counts bad keys too. */
export function authenticateCallers(app: App, reads: Pick<KeyReads, "find" | "findByDigest">): void {
  app.decorateRequest("caller", null);
  app.addHook("onRequest", async (request) => {
    request.caller = await callerFrom(request.headers.authorization, reads);
  });
}

/** Refuses callers without a valid key (401) and keys without the route's scope (403). */
export function authorizeCallers(app: App): void {
  app.addHook("onRequest", async (request) => {
    const { scope } = request.routeOptions.config;
    if (scope === undefined || scope === "public") return;
    if (request.caller === null && request.headers.authorization !== undefined) {
      throw new Problem("key-not-valid", "It is mistyped, unknown or revoked.", CHALLENGE);
    }
    const { role } = callerOf(request);
    if (holdsScope(role, scope)) return;
    throw new Problem("scope-missing", `A key in the role ${role} does not hold ${scope}.`);
  });
}

async function callerFrom(
  authorization: string | undefined,
  { find, findByDigest }: Pick<KeyReads, "find" | "findByDigest">,
): Promise<Caller | null> {
  const [, token = ""] = BEARER.exec(authorization ?? "") ?? [];
  const key = readKeyText(token);
  const record = isPassphrase(token) ? await findByDigest(keyDigest(token)) : key && (await find(key.keyId));
  if (record === undefined || record.revokedAt !== undefined) return null;
  return matchesDigest(token, record.keySha256) ? { keyId: record.id, role: record.role } : null;
}
