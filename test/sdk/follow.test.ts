import { type Client, createClient, Forbidden, type Event as ShopEvent } from "@rimwise/client";
import { describe, expect, it } from "vitest";
import { openShop } from "../contract/shop.ts";

const STRAIGHT = {
  name: "Straight, 12.7 mm",
  form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25 },
  shankDiameterMm: 12.7,
  wings: 2,
} as const;

/** A shop that listens, and a client that reaches it by the platform's own fetch. */
async function listeningShop() {
  const shop = await openShop();
  const baseUrl = await shop.app.listen({ port: 0, host: "127.0.0.1" });
  const clientWith = (key: string, fetch = (request: Request) => globalThis.fetch(request)): Client =>
    createClient({ baseUrl, key, fetch });
  return { shop, client: clientWith(shop.managerKey), clientWith };
}

async function take(events: AsyncIterable<ShopEvent>, count: number): Promise<ShopEvent[]> {
  const taken: ShopEvent[] = [];
  for await (const event of events) if (taken.push(event) === count) break;
  return taken;
}

describe("events, followed through the client", () => {
  it("come as they happen, with the reason that was given", async () => {
    const { client } = await listeningShop();
    const coming = take(client.events.follow({ after: 2 }), 2);
    const bit = await client.bits.create(STRAIGHT, { reason: "für die neue Küche – 5 %" });
    await client.bits.update(bit.id, { wings: 3 }, { ifMatch: bit.version, reason: "miscounted" });
    expect((await coming).map(({ type, why }) => [type, why])).toEqual([
      ["bit.created", "für die neue Küche – 5 %"],
      ["bit.changed", "miscounted"],
    ]);
  });

  it("go on after the last one when the connection is cut, with none missed and none twice", async () => {
    const { shop, clientWith } = await listeningShop();
    const cuts: AbortController[] = [];
    const client = clientWith(shop.managerKey, async (request) => {
      const answer = await globalThis.fetch(request);
      const cut = new AbortController();
      cuts.push(cut);
      // Not a signal of the request: Node 20 may collect one made of several before it is heard.
      const { readable, writable } = new TransformStream();
      void answer.body?.pipeTo(writable, { signal: cut.signal }).catch(() => undefined);
      return new Response(readable, answer);
    });
    const writer = clientWith(shop.managerKey);
    const seen: number[] = [];
    for await (const { sequence } of client.events.follow()) {
      seen.push(sequence);
      if (sequence === 2 || sequence === 4) {
        cuts.at(-1)?.abort();
        await writer.bits.create(STRAIGHT);
      }
      if (sequence === 6) break;
      if (sequence !== 3 && sequence !== 5) await writer.bits.create(STRAIGHT);
    }
    expect(seen).toEqual([1, 2, 3, 4, 5, 6]);
    expect(cuts).toHaveLength(3);
  });

  it("end with the signal's reason, and are refused to whoever may not read them", async () => {
    const { client, clientWith } = await listeningShop();
    const giving = new AbortController();
    const following = take(client.events.follow({ signal: giving.signal }), 1000);
    setTimeout(() => giving.abort(new Error("gone home")), 50);
    await expect(following).rejects.toThrow("gone home");
    const { key } = await client.keys.create({ name: "Bench", role: "member" });
    await expect(take(clientWith(key).events.follow(), 1)).rejects.toBeInstanceOf(Forbidden);
  });

  it("can be shown to be what they were", async () => {
    const { client } = await listeningShop();
    const checkpoint = await client.checkpoints.create({ reason: "end of term" });
    expect(await client.checkpoints.get(checkpoint.id)).toEqual(checkpoint);
    expect(await client.events.verify({})).toMatchObject({ isIntact: true, checkpoints: 1 });
    await client.signing.rotateKeys({ reason: "yearly" });
    expect((await client.signing.getJsonWebKeySet()).keys).toHaveLength(2);
    const { callers } = await client.events.summarize({
      query: { since: new Date(Date.now() - 60_000).toISOString() },
    });
    expect(callers.map(({ count }) => count).reduce((sum, count) => sum + count)).toBeGreaterThan(0);
  });
});
