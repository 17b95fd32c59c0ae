import { describe, expect, it } from "vitest";
import { answering, json, problem } from "../testing/scripted-service.ts";
import { NotFound } from "./errors.ts";
import type { Operation } from "./operation.ts";
import { type Fetch, settingsFrom } from "./options.ts";
import { createCaller } from "./request.ts";

describe("a list", () => {
  const page = (ids: string[], nextCursor: string | null) =>
    json(200, { data: ids.map((id) => ({ id })), nextCursor });
  const LIST: Operation = { method: "GET", path: "/v1/bits", query: { limit: 2 } };
  const list = (fetch: Fetch) =>
    createCaller(settingsFrom({ baseUrl: "http://shop.test", fetch })).list<{ id: string }>(LIST);

  it("is read page after page as it is iterated", async () => {
    const { fetch, requests } = answering(page(["a", "b"], "c1"), page(["c"], null));
    const ids: string[] = [];
    for await (const { id } of list(fetch)) ids.push(id);
    expect(ids).toEqual(["a", "b", "c"]);
    expect(requests.map(({ url }) => new URL(url).search)).toEqual(["?limit=2", "?limit=2&cursor=c1"]);
  });

  it("is not read further than it is iterated", async () => {
    const { fetch, requests } = answering(page(["a", "b"], "c1"));
    for await (const { id } of list(fetch)) if (id === "a") break;
    expect(requests).toHaveLength(1);
  });

  it("can be had a page at a time", async () => {
    const { fetch } = answering(page(["a", "b"], "c1"), page(["c"], null));
    const sizes: number[] = [];
    for await (const { data } of list(fetch).byPage()) sizes.push(data.length);
    expect(sizes).toEqual([2, 1]);
  });

  it("ends at a page without records, though a cursor comes with it", async () => {
    const { fetch, requests } = answering(page(["a"], "c1"), page([], "c1"));
    for await (const _bit of list(fetch));
    expect(requests).toHaveLength(2);
  });

  it("gives its first page when it is awaited, and with its headers", async () => {
    const { fetch, requests } = answering(page(["a", "b"], "c1"), page(["a", "b"], "c1"));
    const bits = list(fetch);
    expect(requests).toHaveLength(0);
    expect(await bits).toEqual({ data: [{ id: "a" }, { id: "b" }], nextCursor: "c1" });
    const { data, response } = await bits.withResponse();
    expect([data.nextCursor, response.status]).toEqual(["c1", 200]);
    await expect(list(answering(problem(404, "not-found")).fetch)).rejects.toBeInstanceOf(NotFound);
  });

  it("gives at most so many records as an array, and asks for no page more", async () => {
    const pages = () => [page(["a", "b"], "c1"), page(["c", "d"], "c2")] as const;
    const { fetch, requests } = answering(...pages());
    expect(await list(fetch).all({ limit: 3 })).toEqual([{ id: "a" }, { id: "b" }, { id: "c" }]);
    expect(requests).toHaveLength(2);
    const short = answering(page(["a"], null));
    expect(await list(short.fetch).all({ limit: 3 })).toEqual([{ id: "a" }]);
    for (const limit of [0, -1, 1.5, Number.NaN, Number.POSITIVE_INFINITY])
      await expect(list(fetch).all({ limit })).rejects.toThrow("limit must be a whole number");
  });

  it("rejects with the error of the page that failed", async () => {
    const { fetch } = answering(page(["a"], "c1"), problem(404, "not-found"));
    const reading = async () => {
      for await (const _bit of list(fetch));
    };
    await expect(reading()).rejects.toBeInstanceOf(NotFound);
  });
});
