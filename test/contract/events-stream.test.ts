import { describe, expect, onTestFinished, test } from "vitest";
import { openShop, PANEL_BIT, type Shop } from "./shop.ts";

type Message = { id: string; event: string; data: { sequence: number; type: string; subjectId: string } };

/** A shop that listens, and streams of its events by the platform's own fetch. */
async function listeningShop() {
  const shop = await openShop();
  const address = await shop.app.listen({ port: 0, host: "127.0.0.1" });
  const open = async (
    path = "/v1/events/stream",
    headers: Record<string, string> = {},
    key = shop.managerKey,
  ) => {
    const leaving = new AbortController();
    onTestFinished(() => leaving.abort());
    const response = await fetch(address + path, {
      headers: { authorization: `Bearer ${key}`, ...headers },
      signal: leaving.signal,
    });
    return { response, leave: () => leaving.abort(), ...reading(response) };
  };
  return { ...shop, open };
}

/** Takes the messages of a stream as they come. */
function reading(response: Response) {
  const reader = response.body?.getReader();
  const decoder = new TextDecoder();
  let text = "";
  const more = async () => {
    const chunk = await reader?.read();
    text += decoder.decode(chunk?.value, { stream: true });
    return chunk?.done === false;
  };
  const messages = () =>
    [...text.matchAll(/^id: (.*)\nevent: (.*)\ndata: (.*)\n\n/gm)].map(
      ([, id = "", event = "", data = ""]): Message => ({ id, event, data: JSON.parse(data) }),
    );
  return {
    next: async (count: number) => {
      while (messages().length < count) if (!(await more())) throw new Error(`ended after ${text}`);
      return messages();
    },
    end: async () => {
      while (await more());
      return messages();
    },
  };
}

const addBit = ({ ask }: Shop) => ask("POST", "/v1/bits", { body: PANEL_BIT });

describe("the stream of events", () => {
  test("sends what has been, and then what happens, each as the feed has it", async () => {
    const shop = await listeningShop();
    const { response, next } = await shop.open();
    expect(response.status).toBe(200);
    expect(response.headers.get("content-type")).toBe("text/event-stream; charset=utf-8");
    expect(response.headers.get("cache-control")).toContain("no-transform");
    expect(response.headers.get("x-request-id")).toBeTruthy();
    expect((await next(2)).map(({ event }) => event)).toEqual(["key.created", "signing-key.created"]);
    await addBit(shop);
    await addBit(shop);
    const messages = await next(4);
    expect(messages.map(({ id }) => id)).toEqual(["1", "2", "3", "4"]);
    const feed = await shop.ask("GET", "/v1/events");
    expect(messages.map(({ data }) => data)).toEqual(feed.body.data);
    expect(messages.map(({ event }) => event)).toEqual(
      feed.body.data.map(({ type }: { type: string }) => type),
    );
  });

  test("goes on after the last event seen: nothing is missed and nothing comes twice", async () => {
    const shop = await listeningShop();
    const first = await shop.open("/v1/events/stream?after=2");
    await addBit(shop);
    const [seen] = await first.next(1);
    first.leave();
    await Promise.all([addBit(shop), addBit(shop), addBit(shop)]);
    const second = await shop.open("/v1/events/stream?after=2", { "Last-Event-ID": String(seen?.id) });
    const missed = await second.next(3);
    await addBit(shop);
    expect((await second.next(4)).map(({ id }) => id)).toEqual(["4", "5", "6", "7"]);
    expect(missed.map(({ id }) => id)).toEqual(["4", "5", "6"]);
  });

  test("loses nothing of many changes made at once while several follow", async () => {
    const shop = await listeningShop();
    const streams = await Promise.all([shop.open(), shop.open("/v1/events/stream?after=0")]);
    await Promise.all(Array.from({ length: 150 }, () => addBit(shop)));
    const wanted = Array.from({ length: 152 }, (_, index) => String(index + 1));
    for (const { next } of streams) expect((await next(152)).map(({ id }) => id)).toEqual(wanted);
  });

  test("is ended when the service closes, which waits for nobody", async () => {
    const shop = await listeningShop();
    const { next, end } = await shop.open();
    await next(2);
    const closed = shop.app.close();
    expect((await end()).map(({ id }) => id)).toEqual(["1", "2"]);
    await closed;
  });

  test("ends for a key that is revoked meanwhile, before it sends anything more", async () => {
    const shop = await listeningShop();
    const { body: key } = await shop.ask("POST", "/v1/keys", { body: { name: "Wall", role: "instructor" } });
    const { next, end } = await shop.open("/v1/events/stream", {}, key.key);
    await next(3);
    await shop.ask("POST", `/v1/keys/${key.id}/revoke`);
    expect((await end()).map(({ event }) => event)).toEqual([
      "key.created",
      "signing-key.created",
      "key.created",
    ]);
  });

  test("is open ten times for one key at most, and again once one is left", async () => {
    const shop = await listeningShop();
    const streams = await Promise.all(Array.from({ length: 10 }, () => shop.open()));
    expect(streams.map(({ response }) => response.status)).toEqual(Array(10).fill(200));
    const refused = await shop.open();
    expect(refused.response.status).toBe(429);
    expect(refused.response.headers.get("retry-after")).toBe("10");
    streams[0]?.leave();
    await expect.poll(async () => (await shop.open()).response.status).toBe(200);
  });

  test.each([
    ["?after=-1", {}, "query", "/after"],
    ["?after=x", {}, "query", "/after"],
    ["?before=1", {}, "query", "/before"],
    ["?after=3", {}, "query", "/after"],
    ["", { "Last-Event-ID": "latest" }, "header", "/last-event-id"],
    ["", { "Last-Event-ID": "99" }, "header", "/Last-Event-ID"],
  ])("%s with %j is refused by name", async (query, headers, place, pointer) => {
    const { ask } = await openShop();
    const answer = await ask("GET", `/v1/events/stream${query}`, { headers });
    expect(answer.status).toBe(422);
    expect(answer.body.errors).toMatchObject([{ in: place, pointer }]);
  });

  test("is for reading alone, by those who may read events", async () => {
    const { ask } = await openShop();
    const { body: member } = await ask("POST", "/v1/keys", { body: { name: "Bench", role: "member" } });
    expect((await ask("GET", "/v1/events/stream", { key: member.key })).status).toBe(403);
    const head = await ask("HEAD", "/v1/events/stream");
    expect(head.status).toBe(405);
    expect(head.headers["allow"]).toBe("GET, OPTIONS");
  });
});
