import type { App } from "./app-type.ts";

/**
 * Puts the path of the public address before every path that an answer's headers lead to: a proxy in front takes it away
 * from requests, and callers must find it in the answers.
 */
export function prefixPaths(app: App, publicUrl: string): void {
  const prefix = new URL(publicUrl).pathname.replace(/\/$/, "");
  if (prefix === "") return;
  app.addHook("onSend", async (_request, reply) => {
    const location = reply.getHeader("Location");
    const link = reply.getHeader("Link");
    if (typeof location === "string" && location.startsWith("/"))
      reply.header("Location", `${prefix}${location}`);
    if (typeof link === "string" && link.startsWith("</")) reply.header("Link", `<${prefix}${link.slice(1)}`);
  });
}
