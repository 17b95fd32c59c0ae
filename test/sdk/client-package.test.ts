import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { createClient } from "@rimwise/client";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openShop } from "../contract/shop.ts";
import { copyBuiltService } from "../running/built-service.ts";
import { start as startService, temporaryFolder } from "../running/service-process.ts";
import { execute, packedClient, runInProject } from "./packed.ts";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "rimwise-project-"));
const { tarball } = packedClient();
let baseUrl: string;
let key: string;

beforeAll(async () => {
  const shop = await openShop({}, undefined, afterAll, tarball);
  key = shop.managerKey;
  baseUrl = await shop.app.listen({ host: "127.0.0.1", port: 0 });
});
afterAll(() => rmSync(folder, { recursive: true }));

describe("the client that the running service serves", () => {
  test("is installed from it by npm in an empty project, and used", async () => {
    const project = mkdtempSync(join(folder, "empty-"));
    writeFileSync(join(project, "package.json"), '{ "private": true, "type": "module" }');
    // The cache of its own keeps npm from answering out of an earlier run.
    const options = ["--no-audit", "--no-fund", "--cache", join(folder, "npm")];
    await execute("npm", ["install", ...options, `${baseUrl}/client.tgz`], { cwd: project });
    const { dependencies } = JSON.parse(readFileSync(join(project, "package.json"), "utf8"));
    expect(dependencies).toEqual({ "@rimwise/client": `${baseUrl}/client.tgz` });
    const script = `
      import { createClient } from "@rimwise/client";
      const client = createClient({ baseUrl: process.env.SHOP_URL, key: process.env.SHOP_KEY });
      const { name } = await client.bits.create({ name: "Straight", form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 }, shankDiameterMm: 12.7, wings: 2 });
      const { data } = await client.bits.list();
      process.stdout.write(JSON.stringify([name, data.length]));
    `;
    expect(await runInProject({ project }, script, { SHOP_URL: baseUrl, SHOP_KEY: key })).toBe(
      '["Straight",1]',
    );
  });

  test("is given with an ETag, once, and is the very package", async () => {
    const { health } = createClient({ baseUrl });
    const { data, response } = await health.getClientPackage().withResponse();
    expect(Buffer.from(await data.arrayBuffer()).equals(readFileSync(tarball))).toBe(true);
    const again = await fetch(`${baseUrl}/client.tgz`, { headers: { "if-none-match": response.etag ?? "" } });
    expect([again.status, await again.text()]).toEqual([304, ""]);
    const other = await fetch(`${baseUrl}/client.tgz`, { headers: { "if-none-match": '"other"' } });
    expect([other.status, other.headers.get("content-type")]).toEqual([200, "application/gzip"]);
  });

  test("is named as missing by a service that was not built, with what to do", async () => {
    const { ask } = await openShop({}, undefined, undefined, join(folder, "nothing.tgz"));
    const { status, body } = await ask("GET", "/client.tgz", { key: null });
    expect([status, body.code]).toEqual([404, "not-found"]);
    expect(body.detail).toContain("pnpm build");
  });

  test("is found by the built service beside itself", async () => {
    const checkout = temporaryFolder();
    const built = join(checkout, "services/shop");
    mkdirSync(join(built, "dist"), { recursive: true });
    const program = await copyBuiltService(join(built, "dist"));
    cpSync(tarball, join(built, "dist/client.tgz"));
    symlinkSync(join(ROOT, "migrations"), join(checkout, "migrations"));
    for (const name of ["assets", "workers", "node_modules", "package.json"])
      symlinkSync(join(ROOT, "services/shop", name), join(built, name));
    const { url } = await startService([program], join(checkout, "shop.sqlite"));
    const answer = await fetch(`${url}/client.tgz`);
    expect(Buffer.from(await answer.arrayBuffer()).equals(readFileSync(tarball))).toBe(true);
  });
});
