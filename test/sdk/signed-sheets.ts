import { generateKeyPairSync, type KeyObject, sign } from "node:crypto";
import { deflateSync } from "node:zlib";

export const AT = new Date("2026-03-02T08:00:00Z");
export const NOW_S = AT.getTime() / 1000;

export const ours = generateKeyPairSync("ed25519");
export const misplaced = generateKeyPairSync("ed25519");

export const KEYS = { keys: [jwkOf(ours.publicKey, "ours")] };
export const SHEET = {
  iss: "rimwise",
  jti: "approval_1",
  iat: NOW_S - 60,
  nbf: NOW_S - 60,
  exp: NOW_S + 60,
  status: { status_list: { idx: 9, uri: "https://shop.example/v1/approvals/status" } },
  setting: {
    bit: { id: "bit_1" },
    router: { id: "router_1" },
    mounting: "table",
    mark: 2,
    rpm: 10_400,
    woods: [{ id: "black-cherry" }, { id: "hard-maple" }],
  },
};
export const EXPECTED = {
  bitId: "bit_1",
  routerId: "router_1",
  mark: 2,
  woodId: "black-cherry",
  mounting: "table",
} as const;
const LIST = { iss: "rimwise", iat: NOW_S, exp: NOW_S + 3600, status_list: ending([3]) };

/** A list of sixteen bits, those at these places set: draft-ietf-oauth-status-list, section 4. */
export function ending(places: number[]) {
  const bytes = [0, 8].map((first) =>
    places
      .filter((place) => place >= first && place < first + 8)
      .reduce((sum, place) => sum + 2 ** (place - first), 0),
  );
  return { bits: 1, lst: deflateSync(Buffer.from(bytes)).toString("base64url") };
}

/** A compact JWS (RFC 7515) made by Node's own crypto; EdDSA as RFC 8037 has it. */
function signed(payload: object, typ: string, header: object = {}, key: KeyObject = ours.privateKey): string {
  const part = (value: object) => Buffer.from(JSON.stringify(value)).toString("base64url");
  const content = `${part({ alg: "EdDSA", kid: "ours", typ, ...header })}.${part(payload)}`;
  return `${content}.${sign(null, Buffer.from(content), key).toString("base64url")}`;
}

export function jwkOf(key: KeyObject, kid: string) {
  const { x = "" } = key.export({ format: "jwk" });
  return { kty: "OKP", crv: "Ed25519", x, kid, alg: "EdDSA", use: "sig" } as const;
}

export const sheet = (change: object = {}, header: object = {}, key?: KeyObject) =>
  signed({ ...SHEET, ...change }, "rimwise-setting+jws", header, key);
export const list = (change: object = {}, header: object = {}, key?: KeyObject) =>
  signed({ ...LIST, ...change }, "statuslist+jwt", header, key);
