import { createServer, request } from "node:http";
import { afterAll, describe, expect, onTestFinished, test } from "vitest";
import { PANEL_BIT } from "../contract/shop.ts";
import { hasBrowser, launchBrowser, openListeningShop } from "./browser.ts";

const PREFIX = "/tools/rimwise";

describe.skipIf(!hasBrowser)("the pages behind a proxy that serves them below a path", () => {
  const releases: (() => Promise<void>)[] = [];
  afterAll(async () => {
    for (const release of releases) await release();
  });

  test("find their style, their scripts, the service and each other there", async () => {
    const { shop, url } = await openListeningShop((release) => void releases.push(release));
    const outside = await proxyOf(url);
    const place = (await shop.ask("POST", "/v1/places", { body: { name: "Drawer 4", kind: "drawer" } })).body;
    const body = { ...PANEL_BIT, homePlaceId: place.id };
    const bit = (await shop.ask("POST", "/v1/bits", { body })).body;
    const browser = await launchBrowser();
    onTestFinished(() => browser.close());
    const page = await browser.newPage();
    const missing: string[] = [];
    page.on("response", (answer) => {
      if (answer.status() >= 400 && !answer.url().endsWith("favicon.ico")) missing.push(answer.url());
    });
    await page.goto(`${outside}/places/${place.id}`);
    await page.locator("#key").fill(shop.managerKey);
    await page.getByRole("button", { name: "Open" }).click();
    await page.getByRole("link", { name: PANEL_BIT.name }).first().click();
    await page.getByRole("heading", { name: PANEL_BIT.name }).waitFor();
    expect(page.url()).toBe(`${outside}/bits/${bit.id}`);
    expect(missing).toEqual([]);
  });
});

/** A proxy that takes the path away before it passes a request on; nothing else is there. */
function proxyOf(url: string): Promise<string> {
  const server = createServer((asked, answer) => {
    if (asked.url?.startsWith(`${PREFIX}/`) !== true) return void answer.writeHead(404).end();
    const { method, headers } = asked;
    const passed = request(`${url}${asked.url.slice(PREFIX.length)}`, { method, headers }, (got) => {
      answer.writeHead(got.statusCode ?? 502, got.headers);
      got.pipe(answer);
    });
    asked.pipe(passed);
  });
  onTestFinished(() => void server.close());
  return new Promise((resolve) => {
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      const port = typeof address === "object" && address !== null ? address.port : 0;
      resolve(`http://127.0.0.1:${port}${PREFIX}`);
    });
  });
}
