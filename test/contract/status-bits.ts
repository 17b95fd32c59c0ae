import { inflateSync } from "node:zlib";
import type { Shop } from "./shop.ts";

/** The bits of a shop's status list, as draft-ietf-oauth-status-list reads them: ZLIB (RFC 1950) in base64url. */
export async function statusBits({ ask }: Pick<Shop, "ask">): Promise<Buffer> {
  const { jws } = (await ask("GET", "/v1/approvals/status", { key: null })).body;
  const { status_list } = JSON.parse(Buffer.from(jws.split(".")[1], "base64url").toString());
  return inflateSync(Buffer.from(status_list.lst, "base64url"));
}

/** The bit at a place: the first is the lowest bit of the first byte. */
export function placeIn(bits: Buffer, place: number): number {
  return ((bits[Math.floor(place / 8)] ?? 0) >> (place % 8)) & 1;
}
