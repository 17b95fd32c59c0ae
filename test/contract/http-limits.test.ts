import { once } from "node:events";
import { connect } from "node:net";
import { expect, test } from "vitest";
import { openShop } from "./shop.ts";

/** A listening shop, and what it answers to text sent as it is. */
async function spokenTo() {
  const shop = await openShop();
  const address = await shop.app.listen({ port: 0, host: "127.0.0.1" });
  const send = async (...texts: string[]) => {
    const socket = connect(Number(new URL(address).port), "127.0.0.1");
    let answer = "";
    socket.on("data", (chunk) => {
      answer += chunk;
    });
    // A server that has said no may end the connection while we write.
    socket.on("error", () => undefined);
    for (const text of texts) socket.write(text);
    await once(socket, "close");
    const [head = "", body = ""] = answer.split("\r\n\r\n");
    return { status: Number(head.split(" ")[1]), head, body: JSON.parse(body) };
  };
  return { ...shop, send };
}

const HEAD = "Host: shop\r\nConnection: close\r\n";

test("an expectation that nobody can meet is a 417 (RFC 9110, section 10.1.1)", async () => {
  const { send } = await spokenTo();
  const { status, head, body } = await send(`GET /v1/bits HTTP/1.1\r\n${HEAD}Expect: a-miracle\r\n\r\n`);
  expect([status, body.status, body.code, body.instance]).toEqual([
    417,
    417,
    "expectation-failed",
    "/v1/bits",
  ]);
  expect(head).toMatch(/application\/problem\+json/);
  expect(head).toContain(body.requestId);
});

test("headers or a query of 20 kB are a 431", async () => {
  const { send } = await spokenTo();
  const long = "x".repeat(20_000);
  for (const text of [
    `GET /v1/bits HTTP/1.1\r\n${HEAD}X-Long: ${long}\r\n\r\n`,
    `GET /v1/bits?q=${long} HTTP/1.1\r\n${HEAD}\r\n`,
  ]) {
    const { status, head, body } = await send(text);
    expect([status, body.code]).toEqual([431, "headers-too-large"]);
    expect(head).toMatch(/application\/problem\+json/);
  }
});

test("a part of a path of 10,000 characters is a 414", async () => {
  const { send } = await spokenTo();
  const { status, body } = await send(`GET /v1/bits/${"x".repeat(10_000)} HTTP/1.1\r\n${HEAD}\r\n`);
  expect([status, body.code]).toEqual([414, "path-too-long"]);
});

test("a body in pieces without end is a 413, and the connection ends", async () => {
  const { send, managerKey } = await spokenTo();
  const piece = `10000\r\n${" ".repeat(0x10000)}\r\n`;
  const { status, head, body } = await send(
    `POST /v1/bits HTTP/1.1\r\nHost: shop\r\nAuthorization: Bearer ${managerKey}\r\n`,
    "Content-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n",
    ...Array.from({ length: 5 }, () => piece),
  );
  expect([status, body.code]).toEqual([413, "body-too-large"]);
  expect(head).toMatch(/connection: close/i);
});

test("a body of a type that is not taken is a 415, also where none is asked for", async () => {
  const { ask } = await openShop();
  for (const url of ["/v1/bits", "/v1/backups", "/v1/signing-keys/rotate"]) {
    const answer = await ask("POST", url, { body: "<a/>", headers: { "content-type": "text/xml" } });
    expect([answer.status, answer.body.code, answer.headers["accept"]], url).toEqual([
      ...[415, "media-type-not-supported", "application/json"],
    ]);
  }
});
