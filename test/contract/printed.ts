import { injected } from "../../services/shop/testing/injected.ts";
import { PANEL_BIT, type Shop, TABLE_ROUTER } from "./shop.ts";

type Asking = { readonly key?: string; readonly body?: object; readonly method?: "GET" | "POST" };

/** An answer of a shop with its bytes. */
export async function printed(
  shop: Shop,
  url: string,
  { key = shop.managerKey, body, method = "GET" }: Asking = {},
) {
  const { statusCode, headers, rawPayload } = await injected(shop.app, {
    url,
    method,
    headers: { authorization: `Bearer ${key}` },
    ...(body && { payload: body }),
  });
  return { status: statusCode, type: String(headers["content-type"]), headers, bytes: rawPayload };
}

/** A plan to ask for, of a bit and a router that nobody keeps. */
export const planAsked = (more: object = {}) => {
  const { name: _bit, notes: _notes, ...bit } = PANEL_BIT;
  const { name: _router, ...router } = TABLE_ROUTER;
  const cut = { kind: "panel", thicknessMm: 19, edges: [{ lengthMm: 310, grain: "end" }] };
  return { bit, router, mounting: "table", woodId: "black-cherry", cut, ...more };
};

/** The texts of an HTML page, as a person reads them. */
export const readHtml = (html: string) =>
  html
    .replaceAll(/<(style|title|desc)[^>]*>[\s\S]*?<\/\1>/g, " ")
    .replaceAll(/<[^>]*>/g, " ")
    .replaceAll(/\s+/g, " ");
