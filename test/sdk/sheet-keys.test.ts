import { generateKeyPairSync, type KeyObject, sign } from "node:crypto";
import { deflateSync } from "node:zlib";
import { verifySheet } from "@rimwise/client";
import { describe, expect, test } from "vitest";
import { openShop } from "../contract/shop.ts";

const NOW = new Date("2026-03-02T08:00:00.000Z");
const SECONDS = NOW.getTime() / 1000;
const { privateKey, publicKey } = generateKeyPairSync("ed25519");
const key = {
  ...({ kty: "OKP", crv: "Ed25519", alg: "EdDSA", use: "sig", kid: "k1" } as const),
  x: String(publicKey.export({ format: "jwk" }).x),
};

const encoded = (text: string) => Buffer.from(text).toString("base64url");
const jws = (header: string, payload: string, by: KeyObject = privateKey) => {
  const signed = `${encoded(header)}.${encoded(payload)}`;
  return `${signed}.${sign(null, Buffer.from(signed), by).toString("base64url")}`;
};
const headerOf = (typ: string, more: object = {}) =>
  JSON.stringify({ alg: "EdDSA", kid: "k1", typ, ...more });
/** As much of a setting as decides. */
const USED = {
  bit: { id: "bit_1" },
  router: { id: "router_1" },
  mounting: "table",
  mark: 2,
  woods: [{ id: "black-cherry" }],
};
const EXPECTED = {
  bitId: "bit_1",
  routerId: "router_1",
  mark: 2,
  woodId: "black-cherry",
  mounting: "table",
} as const;
const SHEET = {
  exp: SECONDS + 900,
  iat: SECONDS - 60,
  iss: "rimwise",
  jti: "approval_1",
  nbf: 0,
  setting: USED,
  status: { status_list: { idx: 0, uri: "https://shop.example/v1/approvals/status" } },
};
/** A list of eight approvals, none of them ended: one byte of zeros (draft-ietf-oauth-status-list, section 4, from memory). */
const LIST = { bits: 1, lst: deflateSync(Buffer.from([0])).toString("base64url") };
const STATUS = { exp: SECONDS + 900, iat: SECONDS - 60, iss: "rimwise", status_list: LIST };
const sheet = (more: object = {}) =>
  jws(headerOf("rimwise-setting+jws"), JSON.stringify({ ...SHEET, ...more }));
const status = jws(headerOf("statuslist+jwt"), JSON.stringify(STATUS));
const verdict = async (text: string, keys: (typeof key & object)[] = [key]) =>
  (await verifySheet(text, { keys: { keys }, status, at: NOW, expected: EXPECTED })).reasons;
const secondsAgo = (seconds: number) => new Date(NOW.getTime() - seconds * 1000).toISOString();

describe("a sheet whose key is not the current one", () => {
  test("is good if it was signed before the key was retired, and not if it claims to be later", async () => {
    expect(await verdict(sheet())).toEqual([]);
    expect(await verdict(sheet(), [{ ...key, ...{ retiredAt: secondsAgo(60) } }])).toEqual([]);
    expect(await verdict(sheet(), [{ ...key, ...{ retiredAt: secondsAgo(61) } }])).toEqual(["key-retired"]);
  });

  test("is worth nothing once the key is compromised, whenever it claims to be from", async () => {
    const ended = { retiredAt: secondsAgo(0), compromisedAt: secondsAgo(0) };
    expect(await verdict(sheet({ iat: 1 }), [{ ...key, ...ended }])).toEqual(["key-compromised"]);
  });
});

describe("a sheet is written in one way only (RFC 4648, RFC 7515)", () => {
  const payload = JSON.stringify(SHEET);
  const type = "rimwise-setting+jws";
  test.each([
    ["with `crit`", jws(headerOf(type, { crit: ["b64"], b64: true }), payload)],
    ["of another issuer", sheet({ iss: "somebody" })],
    ["with a member twice", jws(headerOf(type), payload.replace("{", '{"jti":"approval_2",'))],
    ["with a header member twice", jws(headerOf(type).replace("{", '{"kid":"k0",'), payload)],
    ["with a space", jws(headerOf(type), payload.replace("{", "{ "))],
    ["with padding", sheet().replace(".", "=.")],
  ])("and not believed %s", async (_name, text) => {
    expect(await verdict(text)).toEqual(["not-a-sheet"]);
  });

  test("and not believed with other bits beyond the signature's last byte", async () => {
    // 64 bytes leave four bits over: the last of 86 characters is one of A, Q, g and w.
    const good = sheet();
    const next = { A: "B", Q: "R", g: "h", w: "x" }[good.at(-1) ?? ""];
    for (const other of [good.slice(0, -1) + next, `${good}==`, `${good}\n`]) {
      expect(await verdict(other)).toEqual(["signature-wrong"]);
    }
  });

  test("and two keys of one name are none", async () => {
    expect(await verdict(sheet(), [key, key])).toEqual(["key-unknown"]);
  });
});

test("the service publishes since when a key is retired or compromised, and signs on with a new one", async () => {
  const shop = await openShop({}, () => NOW);
  const { body: first } = await shop.ask("POST", "/v1/events/checkpoints");
  const published = async () => (await shop.ask("GET", "/.well-known/jwks.json", { key: null })).body.keys;
  await shop.ask("POST", "/v1/signing-keys/rotate");
  expect(await published()).toMatchObject([{ kid: first.signingKeyId, retiredAt: NOW.toISOString() }, {}]);
  const [, current] = await published();
  expect(current).not.toHaveProperty("retiredAt");
  const compromised = await shop.ask("POST", `/v1/signing-keys/${current.kid}/compromise`);
  expect(compromised.status, compromised.text).toBe(200);
  const times = { retiredAt: NOW.toISOString(), compromisedAt: NOW.toISOString() };
  expect(await published()).toMatchObject([{}, { kid: current.kid, ...times }, {}]);
  const { body: last } = await shop.ask("POST", "/v1/events/checkpoints");
  expect(last.signingKeyId).toBe((await published())[2].kid);
  expect((await shop.ask("POST", "/v1/events/verify", { body: {} })).body.isIntact).toBe(true);
  expect((await shop.ask("POST", "/v1/signing-keys/nothing/compromise")).status).toBe(404);
});
