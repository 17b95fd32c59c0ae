import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { made } from "../contract/crib.ts";
import { type Furnished, furnish } from "../contract/furnish.ts";
import { readPdf } from "../contract/read-pdf.ts";
import type { Shop } from "../contract/shop.ts";
import { hasBrowser, launchBrowser, openListeningShop } from "./browser.ts";

/** Every kind of page to print, with the paper it is printed on, mm. */
const KINDS: readonly (readonly [string, (ids: Furnished["ids"]) => string, readonly [number, number]])[] = [
  ["a plan", ({ planId }) => `/v1/plans/${planId}/printout?format=html`, [148, 210]],
  [
    "a plan on a card",
    ({ planId }) => `/v1/plans/${planId}/printout?format=html&paper=index-card`,
    [127, 76],
  ],
  ["an approved setting", ({ approvalId }) => `/v1/approvals/${approvalId}/printout?format=html`, [148, 210]],
  ["a job's day", ({ jobId }) => `/v1/jobs/${jobId}/printout?format=html`, [210, 297]],
  ["a wall chart", ({ routerId }) => `/v1/routers/${routerId}/printout?format=html`, [297, 210]],
  ["labels of bits", ({ bitId }) => `/v1/bits/labels?ids=${bitId}`, [210, 297]],
  ["labels on tape", ({ placeId }) => `/v1/places/${placeId}/labels?stock=tape`, [62, 29]],
];

describe.skipIf(!hasBrowser)("pages to print, in a browser", () => {
  let browser: Browser;
  let shop: Shop;
  let url: string;
  let furnished: Furnished;
  const releases: (() => Promise<void>)[] = [];

  beforeAll(async () => {
    ({ shop, url } = await openListeningShop((release) => void releases.push(release)));
    furnished = await furnish((path, body, key) => made(shop, path, body, key));
    browser = await launchBrowser();
  });

  afterAll(async () => {
    await browser.close();
    for (const release of releases) await release();
  });

  test.each(KINDS)("%s is printed on its paper, as many pages as it has", async (_name, path, size) => {
    const context = await browser.newContext({
      extraHTTPHeaders: { authorization: `Bearer ${shop.managerKey}` },
    });
    const page = await context.newPage();
    const answer = await page.goto(`${url}${path(furnished.ids)}`);
    expect(answer?.status()).toBe(200);
    const sections = await page.locator("section").count();
    const { pages } = await readPdf(await page.pdf({ preferCSSPageSize: true, printBackground: true }));
    expect(pages.length).toBe(sections);
    for (const { widthMm, heightMm, texts } of pages) {
      expect(Math.abs(widthMm - size[0])).toBeLessThan(0.6);
      expect(Math.abs(heightMm - size[1])).toBeLessThan(0.6);
      expect(texts.length).toBeGreaterThan(0);
    }
    await context.close();
  });
});
