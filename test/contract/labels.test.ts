import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addBit, addPlace, addSomebody, made } from "./crib.ts";
import { furnish } from "./furnish.ts";
import { readPdf } from "./read-pdf.ts";
import { openShop, PANEL_BIT, type Shop, TABLE_ROUTER } from "./shop.ts";
import { turnsDuring } from "./turns-during.ts";

let shop: Shop;

beforeAll(async () => {
  shop = await openShop({}, undefined, (release) => afterAll(release));
});

const textsOf = (svg: string) =>
  [...svg.matchAll(/<text[^>]*>(?:<title>[^<]*<\/title>)?([^<]*)<\/text>/g)].map(([, text]) => text);

describe("a label", () => {
  test("is SVG of a size in millimetres that says the bit's diameter, shank and marked maximum whole", async () => {
    const name = "Raised panel with a cove face and a name that goes on for longer than any label";
    const { id } = await addBit(shop, { name, isHandFeedMarked: false, shankDiameterMm: 12.7 });
    const { status, headers, text } = await shop.ask("GET", `/v1/bits/${id}/label`);
    expect(status).toBe(200);
    expect(headers["content-type"]).toMatch(/^image\/svg\+xml/);
    expect(text).toContain('width="62mm" height="29mm"');
    const texts = textsOf(text);
    expect(texts).toEqual(
      expect.arrayContaining(["Ø 88.9 mm", "shank 12.7 mm", "marked max 12,000 rpm", "not for hand feed"]),
    );
    expect(texts.some((each) => each?.endsWith("…"))).toBe(true);
  });

  test("says so if no maximum is marked", async () => {
    const { id } = await addBit(shop, { markedMaxRpm: undefined });
    const { text } = await shop.ask("GET", `/v1/bits/${id}/label`);
    expect(textsOf(text)).toContain("no maximum marked");
  });

  test("of a place names what it is inside, outward", async () => {
    const room = await addPlace(shop, "Machine room");
    const rack = await addPlace(shop, "Rack 2", room.id);
    const position = await addPlace(shop, "Position 14", rack.id);
    const { text } = await shop.ask("GET", `/v1/places/${position.id}/label`);
    expect(textsOf(text)).toEqual(["Position 14", "in Rack 2", "in Machine room"]);
  });

  test("of a setting says for what it is, that it is checked first, and the day on which it ends where the shop is", async () => {
    const own = await openShop(
      { RIMWISE_TIME_ZONE: "Pacific/Auckland" },
      () => new Date("2026-03-02T08:00:00Z"),
    );
    const { ids } = await furnish((path, body, key) => made(own, path, body, key), "2026-04-01T12:30:00Z");
    const { text } = await own.ask("GET", `/v1/approvals/${ids["approvalId"]}/label`);
    expect(textsOf(text)).toEqual([
      "Panels",
      PANEL_BIT.name,
      TABLE_ROUTER.name,
      "in a table (table only)",
      "mark 1, 9,800 rpm",
      // Thirteen hours ahead of UTC (IANA time zone database).
      "until 2 Apr 2026",
      "check first: scan",
    ]);
  });

  test.each(["bits", "places"])("of %s holds no markup and no control character of a name", async (kind) => {
    const name = '<b>"a"</b> & \t <';
    const { id } = kind === "bits" ? await addBit(shop, { name }) : await addPlace(shop, name);
    const { text } = await shop.ask("GET", `/v1/${kind}/${id}/label`);
    expect(text).not.toContain("\t");
    expect(text).toContain("&lt;b&gt;&quot;a&quot;&lt;/b&gt;");
    expect(text).toContain("&amp;");
    // Every `<` opens one of the elements that a label is made of.
    expect(text.replaceAll(/<\/?(svg|title|desc|rect|path|g|text)\b/g, "")).not.toContain("<");
  });

  test.each(["bits", "places", "approvals"])("of %s that are not there is a 404", async (kind) => {
    const answer = await shop.ask("GET", `/v1/${kind}/nothing_1/label`);
    expect(answer.status).toBe(404);
    expect(answer.body.code).toBe("not-found");
  });

  test("is for members too, and not for nobody", async () => {
    const { key } = await addSomebody(shop, "member");
    const bit = await addBit(shop);
    const place = await addPlace(shop, "Rack 4");
    for (const path of [`/v1/bits/${bit.id}/label`, `/v1/places/${place.id}/label`]) {
      expect((await shop.ask("GET", path, { key })).status).toBe(200);
      expect((await shop.ask("GET", path, { key: null })).status).toBe(401);
    }
  });
});

/** Pages of labels, by address. */
const sheets = async () => {
  const own = await openShop({}, () => new Date("2026-03-02T08:00:00Z"));
  const { ids } = await furnish((path, body, key) => made(own, path, body, key), "2026-04-01T12:30:00Z");
  const paths = [
    `/v1/bits/labels?ids=${ids["bitId"]}`,
    `/v1/routers/labels?ids=${ids["routerId"]}`,
    `/v1/approvals/labels?ids=${ids["approvalId"]}`,
    `/v1/places/${ids["placeId"]}/labels?`,
  ];
  return { own, ids, paths };
};

describe("pages of labels", () => {
  test("lie on the stock that was asked for, as HTML and as PDF, with a code that is described", async () => {
    const { own, paths } = await sheets();
    for (const path of paths) {
      const html = await own.ask("GET", `${path}&stock=a4-3x8`);
      expect(html.status, html.text).toBe(200);
      expect(html.headers["content-type"]).toContain("text/html");
      expect(html.text).toContain("@page{size:210mm 297mm;margin:0}");
      const { rawPayload, headers } = await own.app.inject({
        url: `${path}&stock=letter-3x10&format=pdf`,
        headers: { authorization: `Bearer ${own.managerKey}` },
      });
      expect(headers["content-type"]).toBe("application/pdf");
      const { pages, isTagged } = await readPdf(rawPayload);
      expect(isTagged).toBe(true);
      expect(pages[0]?.widthMm).toBeCloseTo(215.9, 1);
      const figures = pages.flatMap(({ elements }) => elements.filter(({ role }) => role === "Figure"));
      // A router has no page of its own that a code could open.
      expect(figures.length > 0).toBe(!path.includes("routers"));
      for (const { alt } of figures) expect(alt).toMatch(/^QR code that opens http/);
    }
  });

  test("are refused for a stock or a record that there is not", async () => {
    const { own, paths } = await sheets();
    for (const path of paths) {
      const { status, body } = await own.ask("GET", `${path}&stock=a9`);
      expect([status, body.errors[0].pointer]).toEqual([422, "/stock"]);
    }
    for (const kind of ["bits", "routers", "approvals"]) {
      const { status, body } = await own.ask("GET", `/v1/${kind}/labels?ids=none_1`);
      expect([status, body.errors[0].pointer], kind).toEqual([422, "/ids"]);
    }
  });

  test("of settings are of those that somebody may see", async () => {
    const { own, ids } = await sheets();
    const { key } = await addSomebody(own, "student");
    const { status, body } = await own.ask("GET", `/v1/approvals/labels?ids=${ids["approvalId"]}`, { key });
    expect([status, body.errors[0].pointer]).toEqual([422, "/ids"]);
  });

  test("are made while others have their turn", async () => {
    const own = await openShop({});
    const ids: string[] = [];
    for (let number = 1; number <= 60; number += 1)
      ids.push((await addBit(own, { ...PANEL_BIT, name: `Drawer ${number}` })).id);
    const turns = await turnsDuring(async () => {
      const { statusCode } = await own.app.inject({
        url: `/v1/bits/labels?ids=${ids.join(",")}`,
        headers: { authorization: `Bearer ${own.managerKey}` },
      });
      expect(statusCode).toBe(200);
    });
    // Three pages that take some 10 ms each: a turn after each of them at least, beside the few that any request has.
    const usual = await turnsDuring(async () => {
      await own.app.inject({
        url: `/v1/bits/${ids[0]}`,
        headers: { authorization: `Bearer ${own.managerKey}` },
      });
    });
    expect(turns).toBeGreaterThan(usual + 2);
  });
});
