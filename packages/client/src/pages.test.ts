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
    createCaller(settingsFrom({ baseUrl: "http://shop.test", fetch })).list<{ id: string }>(LIST, "cursor");

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

  it("rejects with the error of the page that failed", async () => {
    const { fetch } = answering(page(["a"], "c1"), problem(404, "not-found"));
    const reading = async () => {
      for await (const _bit of list(fetch));
    };
    await expect(reading()).rejects.toBeInstanceOf(NotFound);
  });
});
