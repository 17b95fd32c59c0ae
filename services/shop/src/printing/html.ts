import { escaped, svg } from "@rimwise/drawing";
import type { Turns } from "../http/turns.ts";
import type { Pages } from "./pages.ts";

/** Nothing but what the page itself says: no script, no address but its own style. */
export const HTML_POLICY = "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'";

/** On paper each section is a page; on a screen it is seen as one. */
const STYLE =
  "body{margin:0}section{break-after:page}section:last-child{break-after:auto}svg{display:block}" +
  "@media screen{body{background:#ddd}section{width:fit-content;margin:4mm auto;box-shadow:0 0 1mm #888}}";

/** Pages as one HTML document, in parts as they are made. The paper's size is that of the first page: all are alike. */
export async function* htmlOf({ title, pages }: Pages, turns: Turns): AsyncGenerator<string> {
  let number = 0;
  for await (const page of pages) {
    if (number === 0) yield headOf(title, page);
    number += 1;
    yield `<section>${svg(page, { idPrefix: `page-${number}` })}</section>`;
    await turns();
  }
  yield "</main></body></html>\n";
}

function headOf(
  title: string,
  { widthMm, heightMm }: { readonly widthMm: number; readonly heightMm: number },
) {
  const size = `@page{size:${widthMm}mm ${heightMm}mm;margin:0}`;
  return (
    `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width">` +
    `<title>${escaped(title)}</title><style>${size}${STYLE}</style></head><body><main>`
  );
}
