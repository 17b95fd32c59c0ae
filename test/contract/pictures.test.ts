import { createHash } from "node:crypto";
import { compactVerify, createLocalJWKSet } from "jose";
import { PNG } from "pngjs";
import { SaxesParser } from "saxes";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bodyOf, OPERATIONS, urlOf } from "./bodies.ts";
import { addBit, addSomebody, made } from "./crib.ts";
import { type Furnished, furnish } from "./furnish.ts";
import { openShop, PANEL_BIT, type Shop, TABLE_ROUTER } from "./shop.ts";

const AT = new Date("2026-03-02T08:00:00.000Z");
let now = AT;
let shop: Shop;
let furnished: Furnished;

beforeAll(async () => {
  shop = await openShop({}, () => now, afterAll);
  furnished = await furnish(
    (path, body, key) => made(shop, path, body, key),
    new Date(AT.getTime() + 30 * 86_400_000).toISOString(),
  );
});

const drawn = OPERATIONS.filter(({ id }) => /Picture$|^draw/.test(id));

/** A picture's title and every text in it, by a parser of others (saxes). */
function readSvg(text: string) {
  const names = new Set<string>();
  const texts: string[] = [];
  const parser = new SaxesParser();
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ name }) => names.add(name));
  parser.on("text", (each) => texts.push(each));
  parser.write(text).close();
  return { names, text: texts.join(" ") };
}

const plan = (more: object = {}) => {
  const { name: _bit, notes: _notes, ...bit } = PANEL_BIT;
  const { name: _router, ...router } = TABLE_ROUTER;
  const cut = { kind: "panel", thicknessMm: 19, edges: [{ lengthMm: 310, grain: "end" }] };
  return { bit, router, mounting: "table", woodId: "black-cherry", cut, ...more };
};

describe("every picture", () => {
  test("is of something that is kept, or of what is asked about", () => {
    expect(drawn.map(({ id }) => id).sort()).toEqual([
      "drawBit",
      "drawJob",
      "drawJoint",
      "drawPanel",
      "drawPlan",
      "drawProfile",
      "getApprovalPicture",
      "getBitPicture",
      "getJobPicture",
      "getPlacePicture",
      "getPlanPicture",
      "getProfilePicture",
      "getRouterPicture",
    ]);
  });

  test.each(drawn.map((each) => [each.id, each] as const))(
    "%s comes as SVG in both systems of units, and as PNG as wide as was asked",
    async (_id, operation) => {
      const { method } = operation;
      const body = operation.takesJson ? bodyOf(operation, furnished.ids) : undefined;
      const url = urlOf(operation, furnished.ids);
      const ask = (query: string) => shop.ask(method, `${url}?${query}`, body === undefined ? {} : { body });
      for (const units of ["metric", "imperial"]) {
        const { status, headers, text } = await ask(`units=${units}`);
        expect(status, text).toBe(200);
        expect(headers["content-type"]).toContain("image/svg+xml");
        expect(headers["content-security-policy"]).toContain("default-src 'none'");
        const { names } = readSvg(text);
        expect([...names]).toEqual(expect.arrayContaining(["svg", "title", "desc"]));
      }
      const { status, headers } = await ask("format=png&widthPx=300");
      expect([status, headers["content-type"]]).toEqual([200, "image/png"]);
    },
  );
});

/** The bytes of a PNG, which the shop's own way to ask reads as text. */
async function png(path: string): Promise<PNG> {
  const { rawPayload } = await shop.app.inject({
    url: path,
    headers: { authorization: `Bearer ${shop.managerKey}` },
  });
  return PNG.sync.read(rawPayload);
}

describe("a picture", () => {
  test("as PNG is that wide, and not blank", async () => {
    const { width, data } = await png(`/v1/bits/${furnished.ids["bitId"]}/picture?format=png&widthPx=640`);
    expect(width).toBe(640);
    const dark = data.filter((value, index) => index % 4 === 0 && value < 100).length;
    expect(dark).toBeGreaterThan(1000);
  });

  test("of a bit says its name whole, whatever it holds", async () => {
    const name = `Panel </title><script>alert(1)</script> אבג & "3½" 🪵`;
    const bit = await addBit(shop, { ...PANEL_BIT, name });
    const { text } = await shop.ask("GET", `/v1/bits/${bit.id}/picture`);
    const read = readSvg(text);
    expect(read.names.has("script")).toBe(false);
    expect(read.text).toContain("<script>alert(1)</script>");
  });

  test("of a plan shows what is set as the plan says it, in both systems", async () => {
    const { body } = await shop.ask("POST", "/v1/plans/preview", { body: plan() });
    const { text } = await shop.ask("POST", "/v1/plans/picture", { body: plan() });
    const last = body.passes.at(-1);
    expect(readSvg(text).text).toContain(`${last.cutterMm} mm`);
    expect(text).toContain(`data-`);
    const inches = await shop.ask("POST", "/v1/plans/picture?units=imperial", { body: plan() });
    expect(readSvg(inches.text).text).toMatch(/\d in\b|″|\d"/);
    expect(readSvg(inches.text).text).not.toMatch(/\d mm/);
  });

  test("of a plan that must not be run says so and shows no setting", async () => {
    const { text } = await shop.ask("POST", "/v1/plans/picture", { body: plan({ mounting: "handheld" }) });
    const read = readSvg(text).text;
    expect(read).toMatch(/must not be run|do not run/i);
    expect(read).not.toMatch(/Set the dial|Set the bit/);
  });

  test("of a stored plan is refused once it would be another plan", async () => {
    const bit = await addBit(shop);
    const asked = plan({ bit: { id: bit.id } });
    const stored = await made(shop, "/v1/plans", asked);
    expect((await shop.ask("GET", `/v1/plans/${stored.id}/picture`)).status).toBe(200);
    const changed = await shop.ask("PATCH", `/v1/bits/${bit.id}`, {
      body: { markedMaxRpm: 9000 },
      headers: { "If-Match": '"1"' },
    });
    expect(changed.status, changed.text).toBe(200);
    const { status, body } = await shop.ask("GET", `/v1/plans/${stored.id}/picture`);
    expect([status, body.code]).toEqual([409, "result-changed"]);
  });

  test("of an approved setting names it, and is refused when it is no longer in force", async () => {
    const id = furnished.ids["approvalId"];
    const { body: approval } = await shop.ask("GET", `/v1/approvals/${id}`);
    const { status, text } = await shop.ask("GET", `/v1/approvals/${id}/picture`);
    expect([status, approval.state]).toEqual([200, "issued"]);
    expect(readSvg(text).text).toContain(id);
    now = new Date("2030-01-01T00:00:00Z");
    const late = await shop.ask("GET", `/v1/approvals/${id}/picture`);
    now = AT;
    expect([late.status, late.body.code]).toEqual([409, "invalid-state"]);
  });

  test("of an approved setting holds a signed statement of what it shows, which fits no other picture", async () => {
    const id = furnished.ids["approvalId"] ?? "";
    const { text } = await shop.ask("GET", `/v1/approvals/${id}/picture?kind=limits&units=imperial`);
    const [whole = "", jws = ""] = /<metadata>([\w.-]+)<\/metadata>/.exec(text) ?? [];
    const { body: keys } = await shop.ask("GET", "/.well-known/jwks.json", { key: null });
    // jose, a general-purpose library, checks the signature.
    const { payload } = await compactVerify(jws, createLocalJWKSet(keys));
    const said = JSON.parse(new TextDecoder().decode(payload));
    const bare = text.replace(whole, "");
    expect(said).toMatchObject({ sub: id, picture: { kind: "limits", units: "imperial" } });
    expect(said.picture.sha256).toBe(createHash("sha256").update(bare).digest("hex"));
    const { body: approval } = await shop.ask("GET", `/v1/approvals/${id}`);
    expect(said.picture.resultDigest).toBe(approval.resultDigest);
    expect(said.exp).toBe(Math.floor(Date.parse(approval.validUntil) / 1000));
  });

  test("of a place shows what is out and what is held", async () => {
    const drawer = await made(shop, "/v1/places", { name: "Drawer 9", kind: "drawer" });
    const slot = async (name: string) =>
      made(shop, "/v1/places", { name, kind: "position", insideId: drawer.id });
    const one = await addBit(shop, { ...PANEL_BIT, name: "Lent one", homePlaceId: (await slot("A")).id });
    const other = await addBit(shop, { ...PANEL_BIT, name: "Held one", homePlaceId: (await slot("B")).id });
    await slot("C");
    const member = await addSomebody(shop, "member");
    await made(shop, "/v1/loans", { bitId: one.id, personId: member.id });
    await made(shop, `/v1/bits/${other.id}/hold`, { reason: "A chipped tooth." });
    const { text } = await shop.ask("GET", `/v1/places/${drawer.id}/picture`);
    const read = readSvg(text).text;
    for (const said of ["Drawer 9", "A", "B", "C", "Lent one", "out", "held: do not use"])
      expect(read).toContain(said);
  });

  test("of a router never shows a bit at a mark that breaks its limit", async () => {
    const bit = await addBit(shop, { ...PANEL_BIT, name: "Slow one", markedMaxRpm: 5000 });
    const router = await made(shop, "/v1/routers", TABLE_ROUTER);
    const { text } = await shop.ask("GET", `/v1/routers/${router.id}/picture?ids=${bit.id}`);
    expect(readSvg(text).text).toMatch(/Slow one[\s\S]*(not|no mark)/i);
    const wrong = await shop.ask("GET", `/v1/routers/${router.id}/picture?ids=bit_0`);
    expect([wrong.status, wrong.body.errors[0].pointer]).toEqual([422, "/ids"]);
  });

  test("of a kind that the thing has not is refused with those it has", async () => {
    const { status, body } = await shop.ask("GET", `/v1/bits/${furnished.ids["bitId"]}/picture?kind=limits`);
    expect([status, body.errors[0].pointer]).toEqual([422, "/kind"]);
    expect(body.errors[0].accepted).toContain("bit");
  });
});
