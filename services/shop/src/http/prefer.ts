import type { App } from "./app-type.ts";

const MINIMAL = "return=minimal";

/**
 * Answers a creation or a change without its body when the caller prefers so (RFC 7240): Location and ETag say what came of it.
 * Register before answers are compressed.
 */
export function takePreferences(app: App): void {
  app.addHook("onSend", async (request, reply, payload) => {
    const { operation } = request.routeOptions.config;
    if (operation !== "create" && operation !== "change") return payload;
    if (reply.statusCode >= 300 || !prefers(request.headers["prefer"], MINIMAL)) return payload;
    if (reply.statusCode === 200) reply.code(204);
    reply.removeHeader("Content-Type");
    reply.header("Preference-Applied", MINIMAL);
    return null;
  });
}

function prefers(header: string | string[] | undefined, wanted: string): boolean {
  const preferences = [header ?? []].flat().flatMap((each) => each.split(/[,;]/));
  return preferences.some((each) => each.trim().toLowerCase() === wanted);
}
