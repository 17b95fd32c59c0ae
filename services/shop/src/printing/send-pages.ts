import { Readable } from "node:stream";
import type { FastifyReply } from "fastify";
import Type from "typebox";
import { turnsOf } from "../http/turns.ts";
import { HTML_POLICY, htmlOf } from "./html.ts";
import type { Pages } from "./pages.ts";
import { pdfOf } from "./pdf.ts";

/** What an operation says of an answer that is pages. */
export const PAGES_CONTENT = {
  "application/pdf": { schema: Type.String({ format: "binary", description: "PDF, tagged." }) },
  "text/html": { schema: Type.String({ description: "HTML with print styles." }) },
};

/** Pages as a whole PDF, or as HTML while they are made, so that a large one keeps nobody waiting. */
export async function sendPages(
  reply: FastifyReply,
  pages: Pages,
  format: "pdf" | "html",
): Promise<FastifyReply> {
  const turns = turnsOf(reply);
  if (format === "pdf") return reply.type("application/pdf").send(await pdfOf(pages, turns));
  return reply
    .type("text/html; charset=utf-8")
    .header("Content-Security-Policy", HTML_POLICY)
    .send(Readable.from(htmlOf(pages, turns)));
}
