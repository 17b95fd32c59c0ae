import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from "vitest";
import { PANEL_BIT, type Shop, TABLE_ROUTER } from "../contract/shop.ts";
import { qrInPng } from "../drawing/read-qr.ts";
import { hasBrowser, launchBrowser, openListeningShop } from "./browser.ts";

const DAY_MS = 24 * 60 * 60 * 1000;
const PATIENCE_MS = 10_000;
const PHONE = { width: 390, height: 844 };

/** The smallest PNG there is: one pixel. */
const PIXEL =
  "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==";

describe.skipIf(!hasBrowser)("the pages", () => {
  let browser: Browser;
  let shop: Shop;
  let url: string;
  const releases: (() => Promise<void>)[] = [];

  beforeAll(async () => {
    ({ shop, url } = await openListeningShop((release) => void releases.push(release)));
    browser = await launchBrowser();
  });

  afterAll(async () => {
    await browser.close();
    for (const release of releases) await release();
  });

  const made = async (path: string, body: object) => {
    const answer = await shop.ask("POST", path, { body });
    expect(answer.status, answer.text).toBeLessThan(300);
    return answer.body;
  };

  /** A page of its own that notes every error of its console. */
  async function openPage(path: string, key?: string): Promise<{ page: Page; faults: string[] }> {
    const context = await browser.newContext({ viewport: PHONE });
    onTestFinished(() => context.close());
    const page = await context.newPage();
    page.setDefaultTimeout(PATIENCE_MS);
    const faults: string[] = [];
    page.on("pageerror", (error) => void faults.push(String(error)));
    page.on("dialog", (dialog) => {
      faults.push(`dialog: ${dialog.message()}`);
      void dialog.dismiss();
    });
    await page.goto(`${url}${path}`);
    if (key !== undefined) {
      await page.locator("#key").fill(key);
      await page.getByRole("button", { name: "Open" }).click();
    }
    return { page, faults };
  }

  test("a bit's page asks for a key, shows the bit, and forgets the key", async () => {
    const place = await made("/v1/places", { name: "Rack 2, position 14", kind: "position" });
    const bit = await made("/v1/bits", { ...PANEL_BIT, homePlaceId: place.id });
    await made(`/v1/bits/${bit.id}/photographs`, {
      mediaType: "image/png",
      base64: PIXEL,
      caption: "The face",
    });
    const { page, faults } = await openPage(`/bits/${bit.id}`, shop.managerKey);
    await page.getByRole("heading", { name: PANEL_BIT.name }).waitFor();
    const text = await page.locator("main").textContent();
    expect(text).toContain("In the rack");
    expect(text).toContain("12,000 rpm");
    expect(text).toContain("Rack 2, position 14");
    expect(await page.getByAltText("The face").evaluate((image) => Reflect.get(image, "naturalWidth"))).toBe(
      1,
    );
    expect(page.url()).not.toContain("rw_");
    await page.getByRole("button", { name: "Forget this key" }).click();
    await page.getByRole("heading", { name: "Your key" }).waitFor();
    expect(await page.locator("main").textContent()).not.toContain(PANEL_BIT.name);
    expect(faults).toEqual([]);
  });

  test("a held bit cannot be taken for a good one", async () => {
    const bit = await made("/v1/bits", PANEL_BIT);
    await made(`/v1/bits/${bit.id}/hold`, { reason: "A tooth is chipped." });
    const { page } = await openPage(`/bits/${bit.id}`, shop.managerKey);
    await page.getByText("HELD: do not use").waitFor();
    expect(await page.locator("main").textContent()).toContain("A tooth is chipped.");
  });

  test("nothing that a record says is run", async () => {
    const name = '<img src=x onerror="alert(1)"><script>alert(2)</script>';
    const bit = await made("/v1/bits", { ...PANEL_BIT, name, notes: name });
    const { page, faults } = await openPage(`/bits/${bit.id}`, shop.managerKey);
    await page.getByText("In the rack").waitFor();
    expect(await page.locator("h1").textContent()).toBe(name);
    expect(await page.locator("main img, main script").count()).toBe(0);
    expect(faults).toEqual([]);
  });

  test("a wrong key, a record that is not there and a lost connection are said in words", async () => {
    const { page } = await openPage("/bits/bit_nothing", "rw_wrong");
    await page.getByText("That key does not work here").waitFor();
    await page.locator("#key").fill(shop.managerKey);
    await page.getByRole("button", { name: "Open" }).click();
    await page.getByText("There is no bit bit_nothing.").waitFor();
    await page.route("**/v1/**", (route) => route.abort());
    await page.reload();
    await page.getByText("The service cannot be reached.").waitFor();
  });

  test("a place's page says what is missing", async () => {
    const rack = await made("/v1/places", { name: "Rack 3", kind: "rack" });
    const here = await made("/v1/bits", { ...PANEL_BIT, name: "Still here", homePlaceId: rack.id });
    await made("/v1/bits", { ...PANEL_BIT, name: "Not to be seen", homePlaceId: rack.id });
    await made(`/v1/places/${rack.id}/stock-takes`, { bitIds: [here.id] });
    const { page } = await openPage(`/places/${rack.id}`, shop.managerKey);
    await page.getByText("MISSING: 1").waitFor();
    await page.getByRole("link", { name: "Still here" }).click();
    await page.getByRole("heading", { name: "Still here" }).waitFor();
  });

  test("a setting's page is the sheet to print, and its check says yes and why not", async () => {
    const { approvalId, studentId, bitId } = await issued();
    const { page, faults } = await openPage(`/settings/${approvalId}`, shop.managerKey);
    await page.getByText("ISSUED").waitFor();
    const text = () => page.locator("main").textContent();
    expect(await text(), "nobody has been checked").not.toMatch(/Dial at|Passes in/);
    await page.locator("#person").fill("person_nobody");
    await page.getByRole("button", { name: "Check" }).click();
    await page.getByText("NOT ALLOWED").waitFor();
    expect(await text()).not.toMatch(/Dial at|Passes in/);
    await page.locator("#person").fill(studentId);
    await page.getByRole("button", { name: "Check" }).click();
    await page.getByText("ALLOWED", { exact: true }).waitFor();
    await page.getByText("Passes in Black cherry").waitFor();
    expect(await text()).toContain("Dial at");
    const pdf = await page.pdf({ format: "A4" });
    expect(pdf.subarray(0, 5).toString()).toBe("%PDF-");
    await made(`/v1/bits/${bitId}/hold`, { reason: "It fell on the floor." });
    await page.getByRole("button", { name: "Check" }).click();
    await page.getByText("NOT ALLOWED").waitFor();
    expect(await page.locator(".answer").textContent()).toContain("The bit is held");
    await page.reload();
    await page.getByText("LAPSED: do not use").waitFor();
    expect(await page.locator("main").textContent()).not.toContain("Dial at");
    expect(faults).toEqual([]);
  });

  test("a student sees the settings for a bit, checks themselves, and takes a bit out of use that fell", async () => {
    const { approvalId, studentKey, bitId } = await issued();
    const { page, faults } = await openPage(`/bits/${bitId}`, studentKey);
    await page.getByRole("link", { name: "Door panels in cherry" }).click();
    await page.waitForURL(`**/settings/${approvalId}`);
    await page.getByText(PANEL_BIT.name).waitFor();
    await page.getByText(TABLE_ROUTER.name).waitFor();
    await page.getByRole("button", { name: "Check" }).click();
    await page.getByText("ALLOWED", { exact: true }).waitFor();
    await page.goto(`${url}/bits/${bitId}`);
    await page.locator("#because").fill("It fell on the floor.");
    await page.getByRole("button", { name: "Hold this bit" }).click();
    await page.getByText("HELD: do not use").waitFor();
    expect((await shop.ask("GET", `/v1/bits/${bitId}`)).body.state).toBe("held");
    await page.goto(`${url}/settings/${approvalId}`);
    await page.getByText("LAPSED: do not use").waitFor();
    // A student's key may not read the rack: the browser reports those answers itself.
    expect(faults.filter((fault) => !/403/.test(fault))).toEqual([]);
  });

  test.each(["bit", "place", "setting"])(
    "the code on a %s's label leads to its page, and no text runs out of it",
    async (what) => {
      const { labelPath, pagePath } = await labelled(what);
      const { text, headers } = await shop.ask("GET", labelPath);
      expect(headers["content-type"]).toContain("image/svg+xml");
      const context = await browser.newContext({ viewport: { width: 1240, height: 580 } });
      onTestFinished(() => context.close());
      const page = await context.newPage();
      await page.setContent(`<style>body{margin:0}svg{width:1240px;height:580px}</style>${text}`);
      // A loaded machine may take its picture before it has painted.
      await expect
        .poll(async () => qrInPng(await page.screenshot()), { timeout: PATIENCE_MS })
        .toBe(`${url}${pagePath}`);
      const rightmost = await page
        .locator("text")
        .evaluateAll((texts) => Math.max(...texts.map((each) => each.getBoundingClientRect().right)));
      expect(rightmost).toBeLessThanOrEqual(1240);
    },
  );

  async function labelled(what: string): Promise<{ labelPath: string; pagePath: string }> {
    const name = "A very long name that no label of this size could ever hold on two lines <&>";
    switch (what) {
      case "bit": {
        const { id } = await made("/v1/bits", { ...PANEL_BIT, name, isHandFeedMarked: true });
        return { labelPath: `/v1/bits/${id}/label`, pagePath: `/bits/${id}` };
      }
      case "place": {
        const { id } = await made("/v1/places", { name, kind: "drawer" });
        return { labelPath: `/v1/places/${id}/label`, pagePath: `/places/${id}` };
      }
      default: {
        const { approvalId } = await issued();
        return { labelPath: `/v1/approvals/${approvalId}/label`, pagePath: `/settings/${approvalId}` };
      }
    }
  }

  async function issued() {
    const { markedMaxRpm: _, ...unmarked } = PANEL_BIT;
    const bit = await made("/v1/bits", unmarked);
    const router = await made("/v1/routers", TABLE_ROUTER);
    const student = await made("/v1/people", { name: "Bench 3", role: "student" });
    const { key: studentKey } = await made("/v1/keys", { name: "Own", personId: student.id });
    const course = await made("/v1/courses", {
      name: "First year",
      policy: {},
      requirements: {},
      isTwoPerson: false,
    });
    await made(`/v1/courses/${course.id}/enrolments`, { personId: student.id, part: "student" });
    const plan = await made("/v1/plans", {
      bit: { id: bit.id },
      router: { id: router.id },
      mounting: "table",
      woodId: "black-cherry",
      cut: {
        kind: "panel",
        thicknessMm: 19,
        edges: [
          { lengthMm: 310, grain: "end" },
          { lengthMm: 460, grain: "long" },
        ],
      },
    });
    const draft = await made("/v1/approvals", {
      name: "Door panels in cherry",
      courseId: course.id,
      planId: plan.id,
      supervision: "beside",
      validUntil: new Date(Date.now() + 30 * DAY_MS).toISOString(),
    });
    const head = await made("/v1/people", { name: "Head of the shop", role: "manager" });
    const { key } = await made("/v1/keys", { name: "Own", personId: head.id });
    expect((await shop.ask("POST", `/v1/approvals/${draft.id}/issue`, { key })).status).toBe(200);
    return { approvalId: draft.id, studentId: student.id, studentKey, bitId: bit.id };
  }
});
