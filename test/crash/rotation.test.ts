import { setTimeout as wait } from "node:timers/promises";
import { expect, test } from "vitest";
import { builtService } from "../running/built-service.ts";
import { ask, exited, type Running, start, temporaryFile } from "../running/service-process.ts";

/** How long after the request the process is killed, ms: before it is read, amid the writing, after the answer. */
const KILLED_AFTER_MS = [0, 1, 2, 3, 5, 8, 12];

test("a rotation that kill -9 cuts off happens once when it is asked for again, and every key can be checked", {
  timeout: 180_000,
}, async () => {
  const file = temporaryFile();
  const built = [await builtService()];
  let service = await start(built, file);
  for (const [round, delayMs] of KILLED_AFTER_MS.entries()) {
    const lost = rotate(service, `round-${round}`).catch(() => undefined);
    await wait(delayMs);
    service.process.kill("SIGKILL");
    await exited(service);
    await lost;
    service = await start(built, file);
    expect((await rotate(service, `round-${round}`)).status).toBe(200);
    const { body } = await ask(service, "/v1/signing-keys");
    expect(body.data).toHaveLength(round + 2);
    expect(body.data.filter(({ isCurrent }: { isCurrent: boolean }) => isCurrent)).toHaveLength(1);
  }
  const { body: proof } = await ask(service, "/v1/events/verify", {});
  expect(proof).toMatchObject({ isIntact: true, checkpoints: KILLED_AFTER_MS.length });
});

function rotate({ url, key }: Running, idempotencyKey: string): Promise<Response> {
  return fetch(`${url}/v1/signing-keys/rotate`, {
    method: "POST",
    headers: { authorization: `Bearer ${key}`, "idempotency-key": idempotencyKey },
  });
}
