import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addBit, made } from "./crib.ts";
import { planAsked, printed, readHtml } from "./printed.ts";
import { readPdf } from "./read-pdf.ts";
import { openShop, PANEL_BIT, type Shop } from "./shop.ts";

let shop: Shop;

beforeAll(async () => {
  shop = await openShop({}, undefined, afterAll);
});

describe("a plan on paper", () => {
  test("says what the plan says: mark, speed, every step and every caution, in words and on the page", async () => {
    const { body } = await shop.ask("POST", "/v1/plans/preview?units=metric", { body: planAsked() });
    const { bytes } = await printed(shop, "/v1/plans/printout", { method: "POST", body: planAsked() });
    const read = (await readPdf(bytes)).text.replaceAll(/\s+/g, " ");
    const text = (
      await printed(shop, "/v1/plans/printout?format=text", { method: "POST", body: planAsked() })
    ).bytes.toString();
    const unwrapped = text.replaceAll(/\n│ +/g, " ").replaceAll(/ +/g, " ");
    const said: string[] = [...body.steps, ...body.precautions, ...body.findings].map((each) => each.text);
    for (const sentence of said) {
      expect(read).toContain(sentence);
      expect(unwrapped).toContain(sentence);
    }
    expect(read).toContain(
      `Dial mark ${body.speed.mark} Speed, about ${body.speed.rpm.toLocaleString("en")} rpm`,
    );
  });

  test("never says a faster speed than its plan allows", async () => {
    const { body } = await shop.ask("POST", "/v1/plans/preview", { body: planAsked() });
    const { bytes } = await printed(shop, "/v1/plans/printout?paper=index-card", {
      method: "POST",
      body: planAsked(),
    });
    const speeds = [...(await readPdf(bytes)).text.matchAll(/([\d,]+) rpm/g)].map(([, rpm = ""]) =>
      Number(rpm.replaceAll(",", "")),
    );
    expect(speeds.length).toBeGreaterThan(1);
    expect(Math.max(...speeds)).toBeLessThanOrEqual(Math.max(body.speed.ceilingRpm, body.speed.rpmHighest));
  });

  test("that must not be run says so and why, and has no speed, in every format", async () => {
    const body = planAsked({ mounting: "handheld" });
    const pdf = (await readPdf((await printed(shop, "/v1/plans/printout", { method: "POST", body })).bytes))
      .text;
    const html = readHtml(
      (await printed(shop, "/v1/plans/printout?format=html", { method: "POST", body })).bytes.toString(),
    );
    const text = (
      await printed(shop, "/v1/plans/printout?format=text", { method: "POST", body })
    ).bytes.toString();
    for (const said of [pdf, html, text]) {
      expect(said).toMatch(/do not run/i);
      expect(said).toContain("Mount the router in a table.");
      expect(said).not.toMatch(/\d rpm|Set the dial/);
    }
  });

  test("that is kept is refused once it would be another plan", async () => {
    const bit = await addBit(shop);
    const stored = await made(shop, "/v1/plans", planAsked({ bit: { id: bit.id } }));
    expect((await printed(shop, `/v1/plans/${stored.id}/printout`)).status).toBe(200);
    await shop.ask("PATCH", `/v1/bits/${bit.id}`, {
      body: { markedMaxRpm: 9000 },
      headers: { "If-Match": '"1"' },
    });
    const { status, body } = await shop.ask("GET", `/v1/plans/${stored.id}/printout`);
    expect([status, body.code]).toEqual([409, "result-changed"]);
  });

  test("keeps a name and remarks of any signs whole, and nothing of them acts", async () => {
    const name = `Panel </title><script>alert(1)</script> & "3½" 🪵木`;
    const notes = "Hold the work down. ".repeat(100).trim();
    const bit = await addBit(shop, { ...PANEL_BIT, name, notes });
    const stored = await made(shop, "/v1/plans", { name, ...planAsked({ bit: { id: bit.id } }) });
    const url = `/v1/plans/${stored.id}/printout`;
    const read = await readPdf((await printed(shop, url)).bytes);
    expect(read.title).toBe(name);
    expect(read.text.match(/Hold the work down\./g)?.length).toBeGreaterThanOrEqual(100);
    const html = (await printed(shop, `${url}?format=html`)).bytes.toString();
    expect(html).not.toContain("<script");
    expect(html).toContain("&lt;script&gt;");
    expect((await printed(shop, `${url}?format=text`)).bytes.toString()).toContain(name);
  });
});
