import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { made } from "../contract/crib.ts";
import { type Furnished, furnish } from "../contract/furnish.ts";
import { openShop, type Shop } from "../contract/shop.ts";
import { packedClient } from "../sdk/packed.ts";
import { hasBrowser, launchBrowser } from "./browser.ts";

/** A name that is not this machine's own: pages from there, over plain HTTP, get no cryptography from the browser. */
const HOST = "bench.test";

/** What runs in the page and in a worker: a day with the client, and what came of it. */
const USE = `
  import { createClient, NOT_MODIFIED, verifySheet } from "/dist/index.js";
  export async function use({ baseUrl, key }) {
    const sent = [];
    const client = createClient({ baseUrl, key, log: ({ headers }) => void sent.push(Object.keys(headers)) });
    const form = { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 };
    const bit = await client.bits.create({ name: "Straight", form, shankDiameterMm: 12.7, wings: 2 });
    const changed = await client.bits.update(bit.id, { massG: 58 }, bit.version);
    const again = await client.bits.get(bit.id, { ifNoneMatch: changed.version });
    const stale = await client.bits.delete(bit.id, bit.version).catch(({ name, etag }) => name + " " + etag);
    const [approval] = await client.approvals.list({ state: "issued" }).all({ limit: 1 });
    const keys = await client.signing.getJsonWebKeySet();
    const { jws } = await client.approvals.sheet(approval.id);
    const { jws: status } = await client.approvals.status();
    const { bitId, routerId, mounting, setting } = approval;
    const expected = { bitId, routerId, mounting, mark: setting.mark, woodId: "black-cherry" };
    const good = await verifySheet(jws, { keys, status, expected });
    const forged = await verifySheet(jws.slice(0, -20) + "A".repeat(20), { keys, status, expected });
    return {
      isSecure: isSecureContext,
      hasCryptography: crypto.subtle !== undefined,
      massG: changed.massG,
      isNotModified: again === NOT_MODIFIED,
      stale,
      reasons: [good.reasons, forged.reasons],
      saysWhoItIs: sent.some((names) => names.includes("user-agent")),
    };
  }
`;
const WORKER = `
  import { use } from "/use.js";
  onmessage = ({ data }) => use(data).then(postMessage, (error) => postMessage(String(error)));
`;

describe.skipIf(!hasBrowser)("the packed client over plain HTTP", () => {
  const releases: (() => unknown)[] = [];
  afterAll(async () => {
    for (const release of releases.reverse()) await release();
  });
  let shop: Shop;
  let furnished: Furnished;
  let origin: string;
  let given: { baseUrl: string; key: string };

  beforeAll(async () => {
    origin = `http://${HOST}:${await servePages(releases)}`;
    shop = await openShop(
      { RIMWISE_CORS_ORIGINS: origin },
      undefined,
      (release) => void releases.push(release),
    );
    furnished = await furnish((path, body, key) => made(shop, path, body, key));
    given = { baseUrl: await shop.app.listen({ host: "127.0.0.1", port: 0 }), key: furnished.keys.manager };
  });

  const WANTED = {
    isSecure: false,
    hasCryptography: false,
    massG: 58,
    isNotModified: true,
    stale: 'PreconditionFailed "2"',
    reasons: [[], ["signature-wrong"]],
    saysWhoItIs: false,
  };

  test.each([
    ["a page", '(given) => import("/use.js").then(({ use }) => use(given))'],
    [
      "a worker",
      `(given) => new Promise((resolve) => {
        const worker = new Worker("/worker.js", { type: "module" });
        worker.onmessage = ({ data }) => resolve(data);
        worker.onerror = ({ message }) => resolve(message);
        worker.postMessage(given);
      })`,
    ],
  ])("works in %s, and checks a sheet there", async (_where, program) => {
    const browser = await launchBrowser(`--host-resolver-rules=MAP ${HOST} 127.0.0.1`);
    releases.push(() => browser.close());
    const page = await browser.newPage();
    await page.goto(`${origin}/`);
    expect(await page.evaluate(`(${program})(${JSON.stringify(given)})`)).toEqual(WANTED);
  });
});

/** Serves the packed client's files and the two programs; gives the port. */
function servePages(releases: (() => unknown)[]): Promise<number> {
  const { installed } = packedClient();
  const programs = new Map([
    ["/use.js", USE],
    ["/worker.js", WORKER],
  ]);
  const server = createServer(({ url = "/" }, response) => {
    if (url === "/")
      return void response.writeHead(200, { "content-type": "text/html" }).end("<title>Bench</title>");
    if (url === "/favicon.ico") return void response.writeHead(404).end();
    response.writeHead(200, { "content-type": "text/javascript" });
    response.end(programs.get(url) ?? readFileSync(join(installed, url), "utf8"));
  });
  releases.push(() => void server.close());
  return new Promise((resolve, reject) => {
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      if (typeof address === "object" && address) resolve(address.port);
      else reject(new Error("no port"));
    });
  });
}
