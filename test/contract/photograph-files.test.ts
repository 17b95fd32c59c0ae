import { once } from "node:events";
import { connect } from "node:net";
import { expect, onTestFinished, test } from "vitest";
import { addBit } from "./crib.ts";
import { PHOTOGRAPH } from "./furnish.ts";
import { openShop } from "./shop.ts";

const BYTES = Buffer.from(PHOTOGRAPH.base64, "base64");

async function listeningShop() {
  const shop = await openShop();
  const bit = await addBit(shop);
  await shop.app.listen({ host: "127.0.0.1", port: 0 });
  const address = shop.app.server.address();
  const port = typeof address === "object" && address !== null ? address.port : 0;
  return { ...shop, port, path: `/v1/bits/${bit.id}/photographs` };
}

/** Sends the head of a request, and the body only once it is asked for. Gives all that came back. */
async function asksFirst(port: number, path: string, headers: Record<string, string | number>, body: Buffer) {
  const socket = connect(port, "127.0.0.1");
  onTestFinished(() => void socket.destroy());
  let answer = "";
  socket.on("data", (chunk) => {
    if (answer === "" && String(chunk).startsWith("HTTP/1.1 100 ")) socket.write(body);
    answer += chunk;
  });
  const lines = { Host: "shop", Expect: "100-continue", Connection: "close", ...headers };
  const head = Object.entries(lines).map(([name, value]) => `${name}: ${value}\r\n`);
  socket.write(`POST ${path} HTTP/1.1\r\n${head.join("")}\r\n`);
  await once(socket, "close");
  return answer;
}

test("an image by itself is a photograph, and is kept once for each Idempotency-Key", async () => {
  const { app, managerKey, port, path, ask } = await listeningShop();
  const send = () =>
    fetch(`http://127.0.0.1:${port}${path}`, {
      method: "POST",
      headers: {
        authorization: `Bearer ${managerKey}`,
        "content-type": "image/png",
        "idempotency-key": "once",
      },
      body: BYTES,
    });
  const first = await send();
  expect(first.status).toBe(201);
  const photograph = await first.json();
  expect(photograph).toMatchObject({ mediaType: "image/png" });
  expect(await (await send()).json()).toEqual(photograph);
  const { body } = await ask("GET", `/v1/photographs/${photograph.id}/content`);
  expect(body).toEqual(PHOTOGRAPH);
  const elsewhere = await app.inject({
    method: "POST",
    url: "/v1/bits",
    headers: { authorization: `Bearer ${managerKey}`, "content-type": "image/png" },
    payload: BYTES,
  });
  expect([elsewhere.statusCode, elsewhere.headers["accept"]]).toEqual([415, "application/json"]);
});

test("an image of another type than its bytes, or none, is refused", async () => {
  const { app, managerKey, path } = await listeningShop();
  const send = (type: string, payload: Buffer) =>
    app.inject({
      method: "POST",
      url: path,
      headers: { authorization: `Bearer ${managerKey}`, "content-type": type },
      payload,
    });
  expect((await send("image/jpeg", BYTES)).json()).toMatchObject({ errors: [{ pointer: "/mediaType" }] });
  expect((await send("image/png", Buffer.from("<html>"))).statusCode).toBe(422);
  expect((await send("image/gif", BYTES)).statusCode).toBe(415);
  expect((await send("image/png", Buffer.alloc(0))).statusCode).toBeGreaterThanOrEqual(400);
  expect((await send("image/png", Buffer.alloc(6 * 1024 * 1024))).json()).toMatchObject({
    code: "body-too-large",
  });
});

test("a caller who asks first is told no before a byte was sent, and to go on otherwise", async () => {
  const { managerKey, port, path } = await listeningShop();
  const authorization = { Authorization: `Bearer ${managerKey}` };
  const asked = (type: string, length: number, headers = {}) =>
    asksFirst(port, path, { "Content-Type": type, "Content-Length": length, ...headers }, BYTES);
  expect(await asked("image/png", 50 * 1024 * 1024, authorization)).toMatch(
    /^HTTP\/1\.1 413 [\s\S]+at most \d+/,
  );
  expect(await asked("image/gif", BYTES.length, authorization)).toMatch(/^HTTP\/1\.1 415 /);
  expect(await asked("image/png", BYTES.length)).toMatch(/^HTTP\/1\.1 401 /);
  expect(await asked("image/png", BYTES.length, authorization)).toMatch(
    /^HTTP\/1\.1 100 [\s\S]+HTTP\/1\.1 201 /,
  );
  const file = { "Content-Type": "text/csv", "Content-Length": 33 * 1024 * 1024, ...authorization };
  expect(await asksFirst(port, "/v1/bits/import", file, BYTES)).toMatch(/^HTTP\/1\.1 413 /);
});
