import { readFileSync } from "node:fs";
import helmet from "@fastify/helmet";
import type { App } from "../http/app-type.ts";

const ASSETS = new URL("../../assets/", import.meta.url);

const TYPES = {
  html: "text/html; charset=utf-8",
  css: "text/css; charset=utf-8",
  js: "text/javascript; charset=utf-8",
};

/** The pages, by address. Each is the same shell: it holds nothing of the shop, so anybody may load it. */
const PAGES = ["/bits/:bitId", "/places/:placeId", "/settings/:approvalId"];

const FILES = ["page.css", "page.js", "element.js", "ask.js", "bit.js", "place.js", "setting.js"];

/** Scripts, styles and answers from here only; pictures also from what a page made of an answer. */
const POLICY = {
  contentSecurityPolicy: {
    useDefaults: false,
    directives: {
      defaultSrc: ["'none'"],
      scriptSrc: ["'self'"],
      styleSrc: ["'self'"],
      connectSrc: ["'self'"],
      imgSrc: ["'self'", "blob:"],
      formAction: ["'none'"],
      baseUri: ["'none'"],
      frameAncestors: ["'none'"],
    },
  },
  // Whoever puts TLS in front decides on this.
  strictTransportSecurity: false,
} as const;

/** Pages for people: the shell, its style and its scripts. They are no part of the API and stand in no description of it. */
export async function pageRoutes(app: App): Promise<void> {
  await app.register(helmet, { global: false });
  const shell = readFileSync(new URL("shell.html", ASSETS));
  for (const url of PAGES) servePublic(app, url, TYPES.html, shell);
  for (const name of FILES) {
    const type = name.endsWith(".css") ? TYPES.css : TYPES.js;
    servePublic(app, `/pages/${name}`, type, readFileSync(new URL(name, ASSETS)));
  }
}

function servePublic(app: App, url: string, type: string, content: Buffer): void {
  app.get(
    url,
    { config: { scope: "public", operation: "act" }, schema: { hide: true }, helmet: POLICY },
    // The answers' own policy, which allows nothing, gives way to the pages' one.
    async (_request, reply) =>
      reply
        .removeHeader("Content-Security-Policy")
        .type(type)
        .header("Cache-Control", "no-cache")
        .send(content),
  );
}
