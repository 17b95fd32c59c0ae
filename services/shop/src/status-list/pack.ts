import { deflateSync } from "node:zlib";

/** Bits that follow the last one in use, at least: so sheets issued after a list was read still find their place in it. */
const ROOM_AHEAD = 131_072;

/** How long a list may be believed, and how long until there may be another one worth asking for. */
const HOLDS_S = 60 * 60;
const ASK_AGAIN_S = 60;

const ISSUER = "rimwise";

/** What a status list states of so many places, those that ended before their time among them. Times in seconds (RFC 7519). */
export function statusPayload(ended: Iterable<number>, places: number, url: string, at: Date): object {
  const iat = Math.floor(at.getTime() / 1000);
  const bits = bitsOf(ended, Math.ceil((places + ROOM_AHEAD) / ROOM_AHEAD) * ROOM_AHEAD);
  return {
    iss: ISSUER,
    sub: url,
    iat,
    exp: iat + HOLDS_S,
    ttl: ASK_AGAIN_S,
    status_list: { bits: 1, lst: packed(bits) },
  };
}

/**
 * Bits as draft-ietf-oauth-status-list writes them (section 4, from memory): compressed with DEFLATE in the ZLIB format (RFC 1950)
 * at the highest level, in base64url.
 */
export function packed(bits: Uint8Array): string {
  return deflateSync(bits, { level: 9 }).toString("base64url");
}

/** A string of bits, set at these places: the first is the lowest bit of the first byte. */
export function bitsOf(set: Iterable<number>, length: number): Uint8Array {
  const bits = new Uint8Array(Math.ceil(length / 8));
  for (const place of set) {
    const byte = place >>> 3;
    bits[byte] = (bits[byte] ?? 0) | (1 << (place & 7));
  }
  return bits;
}
