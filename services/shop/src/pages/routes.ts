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

const FILES = [
  "page.css",
  "page.js",
  "element.js",
  "ask.js",
  "bit.js",
  "check.js",
  "hold.js",
  "place.js",
  "setting.js",
];

/** Scripts, styles and answers from here only; pictures also from what a page made of an answer. */
const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "connect-src 'self'",
  "img-src 'self' blob:",
  "form-action 'none'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
].join("; ");

/** Beside the policy, which is set in place of the one that all answers have. Whoever puts TLS in front decides on its own header. */
const HELMET = { contentSecurityPolicy: false, strictTransportSecurity: false } as const;

/** Pages for people: the shell, its style and its scripts. They are no part of the API and stand in no description of it. */
export async function pageRoutes(app: App): Promise<void> {
  const shell = readFileSync(new URL("shell.html", ASSETS));
  // In a context of their own: the plugin has a hook for every request of the one that it is registered in.
  await app.register(async (pages: App) => {
    await pages.register(helmet, { global: false });
    for (const url of PAGES) servePublic(pages, url, TYPES.html, shell);
    for (const name of FILES) {
      const type = name.endsWith(".css") ? TYPES.css : TYPES.js;
      servePublic(pages, `/pages/${name}`, type, readFileSync(new URL(name, ASSETS)));
    }
  });
}

function servePublic(app: App, url: string, type: string, content: Buffer): void {
  app.get(
    url,
    { config: { scope: "public", operation: "act" }, schema: { hide: true }, helmet: HELMET },
    async (_request, reply) =>
      reply
        .type(type)
        .header("Content-Security-Policy", POLICY)
        .header("Cache-Control", "no-cache")
        .send(content),
  );
}
