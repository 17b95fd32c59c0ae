import { createPrivateKey, createPublicKey, verify } from "node:crypto";
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { afterEach, describe, expect, test, vi } from "vitest";
import { keptKeys, keyFile, PUBLISHED, unsealed } from "./key-file.ts";
import { secondProcess } from "./second-process.ts";
import { openShop, PANEL_BIT } from "./shop.ts";

type PublicKey = { kid: string; kty: string; crv: string; x: string };

afterEach(() => {
  vi.useRealTimers();
});

/** What a compact JWS (RFC 7515) says, once Node's own cryptography has found it signed by one of these keys. */
function readSigned(jws: string, keys: PublicKey[]) {
  const [header = "", payload = "", signature = ""] = jws.split(".");
  const read = (part: string) => JSON.parse(Buffer.from(part, "base64url").toString());
  const key = keys.find(({ kid }) => kid === read(header).kid);
  if (key === undefined) throw new Error("no such key is published");
  const { kty, crv, x } = key;
  const publicKey = createPublicKey({ key: { kty, crv, x }, format: "jwk" });
  const isSigned = verify(
    null,
    Buffer.from(`${header}.${payload}`),
    publicKey,
    Buffer.from(signature, "base64url"),
  );
  expect(isSigned, "the signature fits").toBe(true);
  return { header: read(header), payload: read(payload) };
}

const publishedKeys = async ({ ask }: Pick<Awaited<ReturnType<typeof openShop>>, "ask">) =>
  (await ask("GET", "/.well-known/jwks.json", { key: null })).body.keys;

describe("the signing keys", () => {
  test("are made at the first start, opened by a file that only its owner reads, and stay", async () => {
    const RIMWISE_SIGNING_KEYS = keyFile();
    const first = await openShop({ RIMWISE_SIGNING_KEYS });
    expect(statSync(RIMWISE_SIGNING_KEYS).mode & 0o777).toBe(0o600);
    expect(existsSync(`${RIMWISE_SIGNING_KEYS}.new`)).toBe(false);
    const second = await secondProcess(first);
    expect(await publishedKeys(second)).toEqual(await publishedKeys(first));
    expect(await publishedKeys(first)).toHaveLength(1);
    expect(readdirSync(dirname(RIMWISE_SIGNING_KEYS))).toEqual(["keys.json"]);
  });

  test("are in the database under a seal, and what opens it is beside it and never in it", async () => {
    const shop = await openShop();
    const { body: checkpoint } = await shop.ask("POST", "/v1/events/checkpoints");
    const [key] = await keptKeys(shop);
    expect(key?.kid).toBe(checkpoint.signingKeyId);
    // The recipe, with Node's own cipher: what is sealed is the private half of what is published.
    const { sealingKey } = JSON.parse(readFileSync(shop.signingKeys, "utf8"));
    const d = unsealed(sealingKey, key?.seal ?? "", { kid: key?.kid, x: key?.x, createdAt: key?.createdAt });
    const jwk = { kty: "OKP", crv: "Ed25519", x: String(key?.x), d };
    const { x } = createPublicKey(createPrivateKey({ key: jwk, format: "jwk" })).export({ format: "jwk" });
    expect(x).toBe(key?.x);
    const everything = JSON.stringify([await keptKeys(shop), (await shop.ask("GET", "/v1/events")).body]);
    for (const secret of [d, Buffer.from(d, "base64url").toString("hex"), sealingKey])
      expect(everything).not.toContain(secret);
    expect(everything.split(String(key?.seal)), "the history has not even the sealed half").toHaveLength(2);
  });

  test("are published with the thumbprints that the standard gives, and without their secrets", async () => {
    const { d, x, kid } = PUBLISHED;
    const file = keyFile({ keys: [{ kid, createdAt: "2026-03-02T08:00:00.000Z", x, d }] });
    const shop = await openShop({ RIMWISE_SIGNING_KEYS: file });
    const answer = await shop.ask("GET", "/.well-known/jwks.json", { key: null });
    expect(answer.headers["content-type"]).toMatch(/^application\/jwk-set\+json/);
    expect(answer.body).toEqual({
      keys: [{ kty: "OKP", crv: "Ed25519", alg: "EdDSA", use: "sig", kid, x }],
    });
    const { body } = await shop.ask("POST", "/v1/events/checkpoints");
    expect(readSigned(body.statement, answer.body.keys).header.kid).toBe(kid);
  });

  test("change on demand: the old one is published still, and can sign no more", async () => {
    const file = keyFile();
    const shop = await openShop({ RIMWISE_SIGNING_KEYS: file });
    const { body: before } = await shop.ask("POST", "/v1/events/checkpoints");
    const headers = { "Change-Reason": "the yearly change" };
    const { body } = await shop.ask("POST", "/v1/signing-keys/rotate", { headers });
    expect(body.data.map(({ isCurrent }: { isCurrent: boolean }) => isCurrent)).toEqual([false, true]);
    expect((await shop.ask("GET", "/v1/signing-keys")).body).toEqual(body);
    const { body: after } = await shop.ask("POST", "/v1/events/checkpoints");
    const keys = await publishedKeys(shop);
    expect(readSigned(before.statement, keys).header.kid).toBe(body.data[0].id);
    expect(readSigned(after.statement, keys).header.kid).toBe(body.data[1].id);
    const { sealingKey } = JSON.parse(readFileSync(file, "utf8"));
    const halves = (await keptKeys(shop)).map(({ seal, kid, x, createdAt, retiredAt }) =>
      unsealed(sealingKey, seal, { kid, x, createdAt, ...(retiredAt && { retiredAt }) }),
    );
    expect(halves.map(({ length }) => length)).toEqual([0, 43]);
    const { body: events } = await shop.ask("GET", "/v1/events?type=checkpoint.created");
    expect(events.data[1]).toMatchObject({
      why: "the yearly change",
      data: { after: { cause: "new-key", signingKeyId: body.data[1].id } },
    });
    expect((await shop.ask("POST", "/v1/events/verify", { body: {} })).body).toMatchObject({
      isIntact: true,
      checkpoints: 3,
    });
  });

  test("changed by many at once are all kept, and one of them is current", async () => {
    const shop = await openShop();
    await Promise.all(Array.from({ length: 5 }, () => shop.ask("POST", "/v1/signing-keys/rotate")));
    const { body } = await shop.ask("GET", "/v1/signing-keys");
    expect(new Set(body.data.map(({ id }: { id: string }) => id)).size).toBe(6);
    expect(body.data.filter(({ isCurrent }: { isCurrent: boolean }) => isCurrent)).toHaveLength(1);
    const { body: proof } = await shop.ask("POST", "/v1/events/verify", { body: {} });
    expect(proof).toMatchObject({ isIntact: true, checkpoints: 5 });
  });

  test("are for managers to see and to change", async () => {
    const { ask } = await openShop();
    const { body: key } = await ask("POST", "/v1/keys", { body: { name: "Tutor", role: "instructor" } });
    expect((await ask("GET", "/v1/signing-keys", { key: key.key })).status).toBe(403);
    expect((await ask("POST", "/v1/signing-keys/rotate", { key: key.key })).status).toBe(403);
  });

  const { d, x, kid } = PUBLISHED;
  const good = { kid, createdAt: "2026-03-02T08:00:00.000Z", x, d };
  test.each([
    ["empty", ""],
    ["cut short", JSON.stringify({ keys: [good] }).slice(0, -9)],
    ["without keys", { keys: [] }],
    ["with something else in it", { keys: [{ ...good, owner: "nobody" }] }],
    ["with no key that can sign", { keys: [{ ...good, d: undefined }] }],
    ["with another key's name", { keys: [{ ...good, kid: x }] }],
    ["whose secret belongs to another key", { keys: [{ ...good, d: x }] }],
    ["with two that can sign", { keys: [good, good] }],
  ])("in a file that is %s stop the start with a sentence that shows no secret", async (_what, content) => {
    const file = keyFile(content);
    const start = openShop({ RIMWISE_SIGNING_KEYS: file });
    await expect(start).rejects.toThrow(`RIMWISE_SIGNING_KEYS: the signing keys in ${file} cannot be used`);
    await expect(start).rejects.not.toThrow(d);
  });

  test("that cannot be written stop the start", async () => {
    const file = join(keyFile(), "nowhere", "keys.json");
    await expect(openShop({ RIMWISE_SIGNING_KEYS: file })).rejects.toThrow(
      `RIMWISE_SIGNING_KEYS: the signing keys cannot be written to ${file}`,
    );
  });
});

describe("a checkpoint", () => {
  test("states the latest event and its hash, signed, and is an event itself", async () => {
    const shop = await openShop({}, () => new Date("2026-03-02T08:00:00Z"));
    await shop.ask("POST", "/v1/bits", { body: PANEL_BIT });
    const answer = await shop.ask("POST", "/v1/events/checkpoints");
    expect(answer.status).toBe(201);
    const { body: checkpoint } = answer;
    const { body: events } = await shop.ask("GET", "/v1/events");
    expect(checkpoint).toMatchObject({ sequence: 3, hash: events.data[2].hash, cause: "asked" });
    expect(events.data[3]).toMatchObject({
      type: "checkpoint.created",
      subjectId: checkpoint.id,
      data: { after: checkpoint },
    });
    const { header, payload } = readSigned(checkpoint.statement, await publishedKeys(shop));
    expect(header).toEqual({ alg: "EdDSA", kid: checkpoint.signingKeyId, typ: "rimwise-checkpoint+jws" });
    expect(payload).toEqual({ sequence: 3, hash: checkpoint.hash, at: "2026-03-02T08:00:00.000Z" });
    expect((await shop.ask("GET", String(answer.headers["location"]))).body).toEqual(checkpoint);
    expect((await shop.ask("GET", "/v1/events/checkpoints")).body.data).toEqual([checkpoint]);
    expect((await shop.ask("GET", "/v1/events/checkpoints/checkpoint_0")).status).toBe(404);
  });

  test("is made once for the same request", async () => {
    const { ask } = await openShop();
    const headers = { "Idempotency-Key": "evening" };
    const first = await ask("POST", "/v1/events/checkpoints", { headers });
    const second = await ask("POST", "/v1/events/checkpoints", { headers });
    expect(second.body).toEqual(first.body);
    expect(second.headers["idempotent-replayed"]).toBe("true");
    expect((await ask("GET", "/v1/events/checkpoints")).body.data).toHaveLength(1);
  });

  test("is made by the service after every thousand events", async () => {
    const { ask } = await openShop();
    const causes = async () =>
      (await ask("GET", "/v1/events/checkpoints")).body.data.map(({ cause, sequence }: Sighting) => [
        cause,
        sequence >= 1000,
      ]);
    const add = (count: number) =>
      Promise.all(Array.from({ length: count }, () => ask("POST", "/v1/bits", { body: PANEL_BIT })));
    await add(998);
    expect(await causes()).toEqual([]);
    await add(1);
    await expect.poll(causes).toEqual([["events", true]]);
    await add(5);
    expect(await causes()).toHaveLength(1);
    const { body } = await ask("GET", "/v1/events?after=1000&type=checkpoint.created");
    expect(body.data).toMatchObject([{ by: "system" }]);
  });

  test("is made by the service when an hour has passed with something new, whatever its clock does", async () => {
    vi.useFakeTimers({ toFake: ["setInterval", "clearInterval"] });
    let now = new Date();
    const { ask } = await openShop({}, () => now);
    const count = async () => (await ask("GET", "/v1/events/checkpoints")).body.data.length;
    /** Waits for as many, on a busy machine too; a moment, to see that there are no more. */
    const minutePassed = async (time: number, wanted: number) => {
      now = new Date(time);
      vi.advanceTimersByTime(60_000);
      for (let looks = 0; looks < 100; looks += 1) {
        await new Promise((resolve) => setTimeout(resolve, 50));
        if ((await count()) >= wanted) break;
      }
      return count();
    };
    const start = now.getTime();
    const hour = 60 * 60 * 1000;
    expect(await minutePassed(start + hour / 2, 0)).toBe(0);
    expect(await minutePassed(start + hour + 1000, 1)).toBe(1);
    expect(await minutePassed(start + 3 * hour, 1), "nothing is new but the checkpoint").toBe(1);
    await ask("POST", "/v1/bits", { body: PANEL_BIT });
    expect(await minutePassed(start + 1.5 * hour, 1)).toBe(1);
    expect(await minutePassed(start - 9 * hour, 2), "a clock set back puts nothing off").toBe(2);
    expect((await ask("POST", "/v1/events/verify", { body: {} })).body).toMatchObject({ checkpoints: 2 });
  });
});

type Sighting = { cause: string; sequence: number };
