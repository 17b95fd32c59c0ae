import { type Client, type ClientOptions, createClient, type Fetch } from "@rimwise/client";
import type { App } from "@rimwise/shop";
import { injected } from "../../services/shop/testing/injected.ts";
import { openShop, type Shop } from "../contract/shop.ts";

/** A fresh shop and clients of it that need no port. */
export async function openShopWithClient(settings: Record<string, string> = {}) {
  const shop: Shop = await openShop(settings);
  const clientWith = (options: Partial<ClientOptions> = {}): Client =>
    createClient({ baseUrl: "http://shop.test", key: shop.managerKey, fetch: fetchOf(shop.app), ...options });
  return { shop, client: clientWith(), clientWith };
}

/** The service itself as a fetch. */
export function fetchOf(app: App): Fetch {
  return async (request) => {
    const { pathname, search } = new URL(request.url);
    const body = await request.text();
    const answer = await injected(app, {
      method: methodOf(request),
      url: pathname + search,
      headers: Object.fromEntries(request.headers),
      ...(body !== "" && { payload: body }),
    });
    const headers = new Headers();
    for (const [name, values] of Object.entries(answer.headers)) {
      for (const value of [values].flat()) if (value !== undefined) headers.append(name, String(value));
    }
    return new Response(answer.body === "" ? null : answer.body, { status: answer.statusCode, headers });
  };
}

const METHODS = ["GET", "POST", "PATCH", "PUT", "DELETE"] as const;

function methodOf({ method }: Request): (typeof METHODS)[number] {
  const known = METHODS.find((each) => each === method);
  if (known === undefined) throw new Error(`the client sent ${method}`);
  return known;
}
