import { describe, expect, test } from "vitest";
import { openShop, PANEL_BIT } from "./shop.ts";

async function shopWithBit() {
  const shop = await openShop();
  const { body: bit } = await shop.ask("POST", "/v1/bits", { body: PANEL_BIT });
  return { ...shop, bit, url: `/v1/bits/${bit.id}` };
}

describe("a change says which version it changes", () => {
  test.each(["PATCH", "DELETE"] as const)("%s without If-Match is a 428", async (method) => {
    const { ask, url, bit } = await shopWithBit();
    const answer = await ask(method, url, method === "PATCH" ? { body: { wings: 3 } } : {});
    expect(answer.status).toBe(428);
    expect((await ask("GET", url)).body).toEqual(bit);
  });

  test.each([
    ["an old version", '"0"'],
    ["a weak tag, which never matches strongly", 'W/"1"'],
    ["a tag without quotes", "1"],
    ["a list without the current version", '"2", "3"'],
  ])("%s is a 412 with the current ETag", async (_name, tag) => {
    const { ask, url, bit } = await shopWithBit();
    const answer = await ask("PATCH", url, { body: { wings: 3 }, headers: { "If-Match": tag } });
    expect(answer.status).toBe(412);
    expect(answer.headers["etag"]).toBe('"1"');
    expect((await ask("GET", url)).body).toEqual(bit);
  });

  test.each(['"1"', '"7", "1"', "*"])("If-Match %s lets it through", async (tag) => {
    const { ask, url } = await shopWithBit();
    const answer = await ask("PATCH", url, { body: { wings: 3 }, headers: { "If-Match": tag } });
    expect(answer.status).toBe(200);
  });

  test("of two changes to the same version one is made and the other refused", async () => {
    const { ask, url } = await shopWithBit();
    const answers = await Promise.all(
      [3, 4, 5, 6].map((wings) => ask("PATCH", url, { body: { wings }, headers: { "If-Match": '"1"' } })),
    );
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 412, 412, 412]);
    const winner = answers.find(({ status }) => status === 200);
    expect((await ask("GET", url)).body).toEqual(winner?.body);
    const { body: events } = await ask("GET", "/v1/events");
    expect(events.data.filter(({ type }: { type: string }) => type === "bit.changed")).toHaveLength(1);
  });
});

describe("a read that the caller has already", () => {
  test.each(['"1"', 'W/"1"', '"9", "1"', "*"])("is a 304 for If-None-Match %s", async (tag) => {
    const { ask, url } = await shopWithBit();
    const answer = await ask("GET", url, { headers: { "If-None-Match": tag } });
    expect(answer.status).toBe(304);
    expect(answer.text).toBe("");
    expect(answer.headers["etag"]).toBe('"1"');
  });

  test.each(['"2"', "1", '"1', ""])("is sent whole for If-None-Match %s", async (tag) => {
    const { ask, url, bit } = await shopWithBit();
    const answer = await ask("GET", url, { headers: { "If-None-Match": tag } });
    expect(answer.status).toBe(200);
    expect(answer.body).toEqual(bit);
  });

  test("is still a 404 if there is nothing", async () => {
    const { ask } = await openShop();
    expect((await ask("GET", "/v1/bits/none", { headers: { "If-None-Match": "*" } })).status).toBe(404);
  });
});
