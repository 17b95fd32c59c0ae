import { once } from "node:events";
import { connect, type Socket } from "node:net";
import { beforeAll, expect, onTestFinished, test } from "vitest";
import { builtService } from "../running/built-service.ts";
import { ask, exited, type Running, start, temporaryDatabase } from "../running/service-process.ts";
import { BIT } from "./bit.ts";

const PLAN = {
  bit: { form: BIT.form, shankDiameterMm: 12, wings: 2 },
  router: { minRpm: 10_000, maxRpm: 24_000 },
  mounting: "table",
  woodId: "black-cherry",
  cut: { kind: "groove", depthMm: 6, edges: [{ lengthMm: 600, grain: "long" }] },
};
/** So many plans keep the service busy for some seconds. */
const PLANS = 1000;

let service: readonly string[];
beforeAll(async () => {
  service = [await builtService()];
});

test("SIGTERM amid stalled callers, a long computation and acknowledged writes ends with 0 and loses nothing", {
  timeout: 120_000,
}, async () => {
  const file = temporaryDatabase();
  const shop = await start(service, file);
  await stalledBody(shop);
  await unreadAnswer(shop);
  const stream = await fetch(`${shop.url}/v1/events/stream`, {
    headers: { authorization: `Bearer ${shop.key}` },
  });
  expect(stream.status).toBe(200);
  const computing = ask(shop, "/v1/plans/preview-batch", { requests: Array(PLANS).fill(PLAN) }).then(
    ({ status }) => status,
    () => "cut off",
  );

  const acknowledged: string[] = [];
  const refusals: number[] = [];
  const createUntilGone = async () => {
    for (;;) {
      const answer = await ask(shop, "/v1/bits", BIT).catch(() => undefined);
      if (answer === undefined) return;
      if (answer.status === 201) acknowledged.push(answer.body.id);
      else refusals.push(answer.status);
      if (acknowledged.length === 40) shop.process.kill("SIGTERM");
    }
  };
  await Promise.all(Array.from({ length: 4 }, createUntilGone));
  expect(await exited(shop)).toBe(0);
  expect(
    refusals.filter((status) => status !== 503),
    "refused only as closing",
  ).toEqual([]);
  expect([200, 503, "cut off"]).toContain(await computing);

  const again = await start(service, file);
  for (const id of acknowledged) expect((await ask(again, `/v1/bits/${id}`)).status).toBe(200);
});

function request({ url, key }: Running, head: string): Socket {
  const socket = connect(Number(new URL(url).port), "127.0.0.1");
  onTestFinished(() => void socket.destroy());
  socket.on("error", () => undefined);
  socket.write(`${head}\r\nHost: shop\r\nAuthorization: Bearer ${key}\r\n`);
  return socket;
}

/** A caller that sends half of its body and then nothing. */
async function stalledBody(shop: Running): Promise<void> {
  const socket = request(shop, "POST /v1/bits HTTP/1.1");
  socket.write('Content-Type: application/json\r\nContent-Length: 500\r\n\r\n{"name": "Str');
  await once(socket, "connect");
}

/** A caller that asks for much and never reads what comes. */
async function unreadAnswer(shop: Running): Promise<void> {
  const socket = request(shop, "GET /openapi.json HTTP/1.1");
  socket.pause();
  for (let count = 0; count < 20; count += 1)
    socket.write("\r\nGET /openapi.json HTTP/1.1\r\nHost: shop\r\n");
  socket.write("\r\n");
  await once(socket, "connect");
}
