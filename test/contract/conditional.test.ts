import { describe, expect, test } from "vitest";
import { PANEL_BIT, sharedShop } from "./shop.ts";

const { ask } = sharedShop();

async function newBit() {
  const { body: bit } = await ask("POST", "/v1/bits", { body: PANEL_BIT });
  return { bit, url: `/v1/bits/${bit.id}` };
}

describe("a change says which version it changes", () => {
  test.each(["PATCH", "DELETE"] as const)("%s without If-Match is a 428", async (method) => {
    const { url, bit } = await newBit();
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
    const { url, bit } = await newBit();
    const answer = await ask("PATCH", url, { body: { wings: 3 }, headers: { "If-Match": tag } });
    expect(answer.status).toBe(412);
    expect(answer.headers["etag"]).toBe('"1"');
    expect((await ask("GET", url)).body).toEqual(bit);
  });

  test.each(['"1"', '"7", "1"', "*"])("If-Match %s lets it through", async (tag) => {
    const { url } = await newBit();
    const answer = await ask("PATCH", url, { body: { wings: 3 }, headers: { "If-Match": tag } });
    expect(answer.status).toBe(200);
  });

  test("of two changes to the same version one is made and the other refused", async () => {
    const { bit, url } = await newBit();
    const answers = await Promise.all(
      [3, 4, 5, 6].map((wings) => ask("PATCH", url, { body: { wings }, headers: { "If-Match": '"1"' } })),
    );
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 412, 412, 412]);
    const winner = answers.find(({ status }) => status === 200);
    expect((await ask("GET", url)).body).toEqual(winner?.body);
    const { body: events } = await ask("GET", `/v1/events?subjectId=${bit.id}`);
    expect(events.data.map(({ type }: { type: string }) => type)).toEqual(["bit.created", "bit.changed"]);
  });
});

describe("a read that the caller has already", () => {
  test.each(['"1"', 'W/"1"', '"9", "1"', "*"])("is a 304 for If-None-Match %s", async (tag) => {
    const { url } = await newBit();
    const answer = await ask("GET", url, { headers: { "If-None-Match": tag } });
    expect(answer.status).toBe(304);
    expect(answer.text).toBe("");
    expect(answer.headers["etag"]).toBe('"1"');
  });

  test.each(['"2"', "1", '"1', ""])("is sent whole for If-None-Match %s", async (tag) => {
    const { url, bit } = await newBit();
    const answer = await ask("GET", url, { headers: { "If-None-Match": tag } });
    expect(answer.status).toBe(200);
    expect(answer.body).toEqual(bit);
  });

  test("is still a 404 if there is nothing", async () => {
    expect((await ask("GET", "/v1/bits/none", { headers: { "If-None-Match": "*" } })).status).toBe(404);
  });
});
