import { request } from "node:http";
import { brotliDecompressSync, gunzipSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import { openShop, PANEL_BIT } from "./shop.ts";

type Answer = { status: number; headers: NodeJS.Dict<string | string[]>; body: Buffer };

async function listening() {
  const shop = await openShop();
  const url = await shop.app.listen({ port: 0, host: "127.0.0.1" });
  const ask = (path: string, headers: Record<string, string>) =>
    new Promise<Answer>((resolve, reject) => {
      const asked = request(
        `${url}${path}`,
        { headers: { authorization: `Bearer ${shop.managerKey}`, ...headers } },
        (answer) => {
          const chunks: Buffer[] = [];
          answer.on("data", (chunk: Buffer) => chunks.push(chunk));
          answer.on("end", () =>
            resolve({ status: answer.statusCode ?? 0, headers: answer.headers, body: Buffer.concat(chunks) }),
          );
        },
      );
      asked.on("error", reject).end();
    });
  return { shop, ask };
}

describe("answers are compressed for callers that accept it", () => {
  test.each([
    ["gzip", gunzipSync],
    ["br", brotliDecompressSync],
  ] as const)("with %s, and say the same", async (encoding, decompressed) => {
    const { ask } = await listening();
    const plain = await ask("/v1/woods?limit=100", {});
    const short = await ask("/v1/woods?limit=100", { "accept-encoding": encoding });
    expect(plain.headers["content-encoding"]).toBeUndefined();
    expect(short.headers["content-encoding"]).toBe(encoding);
    expect(short.headers["vary"]).toMatch(/accept-encoding/i);
    expect(short.body.length).toBeLessThan(plain.body.length / 3);
    expect(decompressed(short.body).toString()).toBe(plain.body.toString());
  });

  test("small ones stay as they are", async () => {
    const { ask } = await listening();
    const { headers } = await ask("/livez", { "accept-encoding": "gzip" });
    expect(headers["content-encoding"]).toBeUndefined();
  });

  test("an encoded answer has an ETag of its own, which reads and changes understand", async () => {
    const { shop, ask } = await listening();
    const { body: bit } = await shop.ask("POST", "/v1/bits", {
      body: { ...PANEL_BIT, notes: "A long note. ".repeat(100) },
    });
    const path = `/v1/bits/${bit.id}`;
    const plain = await ask(path, {});
    const short = await ask(path, { "accept-encoding": "gzip" });
    expect([plain.headers["etag"], short.headers["etag"]]).toEqual(['"1"', '"1-gzip"']);
    const known = await ask(path, { "accept-encoding": "gzip", "if-none-match": '"1-gzip"' });
    expect([known.status, known.body.length]).toEqual([304, 0]);
    const changed = await shop.ask("PATCH", path, {
      body: { name: "Another name" },
      headers: { "if-match": '"1-gzip"' },
    });
    expect(changed.status).toBe(200);
    const stale = await shop.ask("PATCH", path, {
      body: { name: "A third name" },
      headers: { "if-match": '"1-gzip"' },
    });
    expect(stale.status).toBe(412);
  });
});
