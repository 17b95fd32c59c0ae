import {
  createClient,
  Forbidden,
  NotFound,
  PreconditionFailed,
  RateLimited,
  Unauthorized,
  ValidationFailed,
} from "@rimwise/client";
import { describe, expect, it } from "vitest";
import { fetchOf, openShopWithClient } from "./shop-client.ts";

const STRAIGHT = {
  name: "Straight, 12.7 mm",
  form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25 },
  shankDiameterMm: 12.7,
  wings: 2,
} as const;

describe("the rack, through the client", () => {
  it("takes a bit, gives it back, changes it at its version and lets it go", async () => {
    const { client } = await openShopWithClient();
    const bit = await client.bits.create(STRAIGHT);
    expect(bit).toMatchObject({ ...STRAIGHT, version: 1 });
    expect(await client.bits.get(bit.id)).toEqual(bit);

    const changed = await client.bits.update(bit.id, { massG: 90 }, bit.version);
    expect(changed).toMatchObject({ massG: 90, version: 2 });
    const stale = client.bits.update(bit.id, { massG: 80 }, { ifMatch: bit.version });
    await expect(stale).rejects.toBeInstanceOf(PreconditionFailed);
    await expect(stale).rejects.toMatchObject({ status: 412, code: "version-stale", etag: '"2"' });
    expect(await client.bits.get(bit.id)).toEqual(changed);

    expect(await client.bits.delete(bit.id, changed.version)).toBeUndefined();
    await expect(client.bits.get(bit.id)).rejects.toBeInstanceOf(NotFound);
  });

  it("gives the ETag a change can be made at", async () => {
    const { client } = await openShopWithClient();
    const { data: bit, response } = await client.bits.create(STRAIGHT).withResponse();
    expect(response).toMatchObject({ status: 201, etag: '"1"', isReplayed: false });
    const changed = await client.bits.update(bit.id, { wings: 3 }, response.etag ?? "");
    expect(changed.wings).toBe(3);
  });

  it("names every field it cannot accept, and keeps nothing of it", async () => {
    const { client } = await openShopWithClient();
    const refused = client.bits.create({ ...STRAIGHT, wings: 0, massG: -1 });
    await expect(refused).rejects.toBeInstanceOf(ValidationFailed);
    await expect(refused).rejects.toMatchObject({ faults: [{ pointer: "/wings" }, { pointer: "/massG" }] });
    for await (const bit of client.bits.list()) expect.unreachable(bit.name);
  });

  it("lists every bit once, in order, over as many pages as it takes", async () => {
    const { client } = await openShopWithClient();
    const made: string[] = [];
    for (let count = 1; count <= 5; count += 1) {
      made.push((await client.bits.create({ ...STRAIGHT, name: `Bit ${count}` })).id);
    }
    const listed: string[] = [];
    for await (const { id } of client.bits.list({ limit: 2 })) listed.push(id);
    expect(listed).toEqual(made);
    const sizes: number[] = [];
    for await (const { data } of client.bits.list({ limit: 2 }).byPage()) sizes.push(data.length);
    expect(sizes).toEqual([2, 2, 1]);
  });

  it("creates once under one Idempotency-Key, and says when it repeats itself", async () => {
    const { client } = await openShopWithClient();
    const first = await client.bits.create(STRAIGHT, { idempotencyKey: "shelf-3" });
    const again = await client.bits.create(STRAIGHT, { idempotencyKey: "shelf-3" }).withResponse();
    expect(again.data).toEqual(first);
    expect(again.response.isReplayed).toBe(true);
    const other = client.bits.create({ ...STRAIGHT, wings: 3 }, { idempotencyKey: "shelf-3" });
    await expect(other).rejects.toMatchObject({ status: 422, code: "idempotency-key-reused" });
  });

  it("creates once though the answer to the first attempt is lost on the way", async () => {
    const { client, shop, clientWith } = await openShopWithClient();
    let attempts = 0;
    const losing = clientWith({
      fetch: async (request) => {
        const answer = await fetchOf(shop.app)(request);
        attempts += 1;
        if (attempts === 1) throw new TypeError("connection reset");
        return answer;
      },
    });
    const { response } = await losing.bits.create(STRAIGHT).withResponse();
    expect(response.isReplayed).toBe(true);
    const listed: string[] = [];
    for await (const { name } of client.bits.list()) listed.push(name);
    expect(listed).toEqual([STRAIGHT.name]);
  });
});

describe("the other resources, through the client", () => {
  it("keep routers and their dials", async () => {
    const { client } = await openShopWithClient();
    const router = await client.routers.create({
      name: "Table router",
      minRpm: 10_000,
      maxRpm: 22_000,
      dial: { marks: { first: 1, last: 6 }, steps: 2 },
    });
    expect(await client.routers.get(router.id)).toEqual(router);
  });

  it("know the woods, each by its kind", async () => {
    const { client } = await openShopWithClient();
    const cherry = await client.woods.get("black-cherry");
    if (cherry.kind !== "species") throw new Error("cherry is a species");
    // Wood Handbook Table 13-5, p. 13-16.
    expect(cherry.changeCoefficient.tangential).toEqual({ value: 0.00248, provenance: "looked-up" });
    await expect(client.woods.get("../keys")).rejects.toBeInstanceOf(NotFound);
  });

  it("list what happened, from where the caller stopped", async () => {
    const { client } = await openShopWithClient();
    const bit = await client.bits.create(STRAIGHT);
    const types: string[] = [];
    for await (const { type, subjectId } of client.events.list({ limit: 1 })) {
      if (subjectId === bit.id) types.push(type);
    }
    expect(types).toEqual(["bit.created"]);
  });

  it("give their health and version without a key, and their counters as text", async () => {
    const { shop, clientWith } = await openShopWithClient();
    const nobody = createClient({ baseUrl: "http://shop.test", fetch: fetchOf(shop.app) });
    expect(await nobody.health.getVersion()).toHaveProperty("version");
    expect(await clientWith().health.getMetrics()).toContain("# TYPE");
    await expect(nobody.bits.list()[Symbol.asyncIterator]().next()).rejects.toBeInstanceOf(Unauthorized);
  });
});

describe("a key, through the client", () => {
  it("of a member may read and not write, and opens nothing once revoked", async () => {
    const { client, clientWith } = await openShopWithClient();
    const created = await client.keys.create({ name: "Bench 3", role: "member" });
    const member = clientWith({ key: created.key });
    for await (const bit of member.bits.list()) expect.unreachable(bit.name);
    await expect(member.bits.create(STRAIGHT)).rejects.toBeInstanceOf(Forbidden);
    await client.keys.revoke(created.id);
    await expect(member.woods.get("mdf")).rejects.toBeInstanceOf(Unauthorized);
  });

  it("that asks too often learns when to come back", async () => {
    const { clientWith } = await openShopWithClient({ RIMWISE_RATE_LIMIT_PER_MINUTE: "2" });
    const client = clientWith({ retries: 0 });
    await client.woods.get("mdf");
    await client.woods.get("mdf");
    const limited: unknown = await client.woods.get("mdf").catch((error: unknown) => error);
    if (!(limited instanceof RateLimited)) throw new Error("the third request was let through");
    expect(limited.retryAfterMs).toBeGreaterThan(0);
    expect(limited.retryAfterMs).toBeLessThanOrEqual(60_000);
  });
});
