import { existsSync, statSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { builtService } from "./built-service.ts";
import { ask, exited, freePort, ran, ready, run, start, temporaryFile } from "./service-process.ts";

let service: readonly string[];
beforeAll(async () => {
  service = [await builtService()];
});

describe("the first manager's key", () => {
  test("without a terminal is in a file that only its owner reads, and in no log", async () => {
    const file = temporaryFile();
    const shop = await start(service, file, { RIMWISE_LOG_LEVEL: "trace" });
    expect((await ask(shop, "/v1/me")).body).toMatchObject({ role: "manager" });
    expect(statSync(`${file}.first-key`).mode & 0o777).toBe(0o600);
    expect(shop.err()).toContain(`${file}.first-key`);
    shop.process.kill("SIGTERM");
    await exited(shop);
    expect(shop.out() + shop.err()).not.toContain("rw_");
  });

  test("is shown in a terminal, and then in no file", async () => {
    const file = temporaryFile();
    const settings = { RIMWISE_DATABASE: file, RIMWISE_PORT: String(await freePort()) };
    const line = [process.execPath, ...service].join(" ");
    const shop = run(["-qefc", line, "/dev/null"], settings, "script");
    await ready(`http://127.0.0.1:${settings.RIMWISE_PORT}`, shop);
    await expect.poll(shop.out, { timeout: 10_000 }).toMatch(/First manager's key, shown this once: rw_\S+/);
    expect(existsSync(`${file}.first-key`)).toBe(false);
    shop.process.kill("SIGTERM");
    await exited(shop);
  });

  test("is the one from the settings when there is one, which is shown nowhere", async () => {
    const file = temporaryFile();
    const key = "a-first-key-of-the-invented-shop";
    const shop = await start(service, file, { RIMWISE_FIRST_KEY: key });
    expect((await ask(shop, "/v1/me")).status).toBe(200);
    expect(existsSync(`${file}.first-key`)).toBe(false);
    expect(shop.out() + shop.err()).not.toContain(key);
  });

  test("that is lost has a successor for whoever holds the machine, and the history says so", async () => {
    const file = temporaryFile();
    const shop = await start(service, file);
    const made = await ran([...service, "new-manager-key", "Bench", "lead"], { RIMWISE_DATABASE: file });
    expect(made.code).toBe(0);
    const key = made.out.trim();
    expect(made.err).not.toContain(key);
    const found = { url: shop.url, key };
    const { body } = await ask(found, "/v1/events");
    expect(body.data.at(-1)).toMatchObject({
      type: "key.created",
      by: "system",
      why: "Made at the machine with the command new-manager-key.",
      data: { after: { name: "Bench lead", role: "manager" } },
    });
    const [lost] = (await ask(found, "/v1/keys")).body.data;
    expect((await ask(found, `/v1/keys/${lost.id}/revoke`, {})).status).toBe(200);
    expect((await ask(shop, "/v1/me")).status).toBe(401);
  });
});
