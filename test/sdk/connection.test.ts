import { createServer } from "node:http";
import { createClient } from "@rimwise/client";
import { expect, onTestFinished, test } from "vitest";

/** A server that answers everything with this, and where it is. */
async function serving(status: number, headers: Record<string, string>, text = "") {
  let asked = 0;
  const server = createServer((_request, response) => {
    asked += 1;
    response.writeHead(status, headers).end(text);
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const close = () => new Promise<void>((resolve) => void server.close(() => resolve()));
  onTestFinished(close);
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("the server has no port");
  return { baseUrl: `http://127.0.0.1:${address.port}`, close, asked: () => asked };
}

const failed = (baseUrl: string, retries: number) =>
  createClient({ baseUrl, retries })
    .bits.get("bit_1")
    .then(
      () => "an answer",
      (error: unknown) => error,
    );

test("a guest network's page with status 200 is no record", async () => {
  const { baseUrl } = await serving(200, { "content-type": "text/html" }, "<html>Welcome, guest</html>");
  expect(await failed(baseUrl, 0)).toMatchObject({ name: "ConnectionError", code: "not-the-service" });
});

test("a redirect is named, and neither followed nor asked again", async () => {
  const { baseUrl, asked } = await serving(307, { location: "/elsewhere" });
  expect(await failed(baseUrl, 2)).toMatchObject({ name: "ConnectionError", code: "redirected" });
  expect(asked()).toBe(1);
});

test("a service that is away is named by what the platform calls it", async () => {
  const { baseUrl, close } = await serving(200, {});
  await close();
  const error = await failed(baseUrl, 0);
  expect(error).toMatchObject({ name: "ConnectionError", code: "ECONNREFUSED" });
  expect(String(error)).toContain("ECONNREFUSED");
});
