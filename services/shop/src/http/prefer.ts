import type { onSendHookHandler } from "fastify";
import type { App } from "./app-type.ts";

const MINIMAL = "return=minimal";

/**
 * Answers a creation or a change without its body when the caller prefers so (RFC 7240): Location and ETag say what came of it.
 * Register before answers are compressed.
 */
export function takePreferences(app: App): void {
  app.addHook("onRoute", (route) => {
    const { operation } = route.config ?? {};
    if (operation === "create" || operation === "change")
      route.onSend = [route.onSend ?? [], asPreferred].flat();
  });
}

const asPreferred: onSendHookHandler = (request, reply, payload, done) => {
  if (reply.statusCode >= 300 || !prefers(request.headers["prefer"], MINIMAL)) return done(null, payload);
  if (reply.statusCode === 200) reply.code(204);
  reply.removeHeader("Content-Type");
  reply.header("Preference-Applied", MINIMAL);
  done(null, null);
};

function prefers(header: string | string[] | undefined, wanted: string): boolean {
  const preferences = [header ?? []].flat().flatMap((each) => each.split(/[,;]/));
  return preferences.some((each) => each.trim().toLowerCase() === wanted);
}
