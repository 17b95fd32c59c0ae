import Fastify from "fastify";
import { describe, expect, it } from "vitest";
import { answersReads } from "./answer-read.ts";

/** An app whose answers are numbered in the order in which they were made. */
function numbered() {
  let commits = 0;
  let made = 0;
  const answerRead = answersReads(() => {});
  const app = Fastify();
  app.decorateRequest("mark", undefined);
  app.addHook("onRequest", async (request) => {
    if (request.headers["viewer"] !== "nobody") request.mark = commits;
  });
  app.get("/records", (request, reply) =>
    answerRead(request, reply, String(request.headers["viewer"]), async () => {
      made += 1;
      reply.header("ETag", `"${made}"`);
      return { made, text: "x".repeat(Number(Object(request.query).characters ?? 1)) };
    }),
  );
  app.get("/refused", (request, reply) =>
    answerRead(request, reply, "", async () => {
      made += 1;
      throw new Error(`refusal ${made}`);
    }),
  );
  const get = async (url: string, viewer = "") => {
    const { headers, payload } = await app.inject({ url, headers: { viewer } });
    const { made: number, message }: { made?: number; message?: string } = JSON.parse(payload);
    return { number, message, etag: headers.etag, type: headers["content-type"] };
  };
  const commit = () => {
    commits += 1;
  };
  return { get, commit };
}

describe("a read that rests on records", () => {
  it("is answered as before, with its headers, as long as nothing is committed", async () => {
    const { get, commit } = numbered();
    const first = await get("/records");
    expect(first).toMatchObject({ number: 1, etag: '"1"', type: "application/json; charset=utf-8" });
    expect(await get("/records")).toEqual(first);
    commit();
    expect(await get("/records")).toMatchObject({ number: 2, etag: '"2"' });
  });

  it("is another one for every viewer and every query", async () => {
    const { get } = numbered();
    expect((await get("/records", "one")).number).toBe(1);
    expect((await get("/records", "other")).number).toBe(2);
    expect((await get("/records?characters=2", "one")).number).toBe(3);
    expect((await get("/records", "one")).number).toBe(1);
  });

  it("is made every time when it is long", async () => {
    const { get } = numbered();
    expect((await get("/records?characters=10000")).number).toBe(1);
    expect((await get("/records?characters=10000")).number).toBe(2);
  });

  it("is made every time for whoever came without a mark", async () => {
    const { get } = numbered();
    expect((await get("/records", "nobody")).number).toBe(1);
    expect((await get("/records", "nobody")).number).toBe(2);
  });

  it("is refused again every time", async () => {
    const { get } = numbered();
    expect((await get("/refused")).message).toBe("refusal 1");
    expect((await get("/refused")).message).toBe("refusal 2");
  });
});
