import { createHash } from "node:crypto";
import { compactVerify, createLocalJWKSet } from "jose";
import { PNG } from "pngjs";
import { describe, expect, test } from "vitest";
import { readBack } from "../drawing/read-back.ts";
import { bodyOf, OPERATIONS, urlOf } from "./bodies.ts";
import { addBit, addSomebody, made } from "./crib.ts";
import { AT, furnishedShop } from "./furnished-shop.ts";
import { planAsked, printed } from "./printed.ts";
import { PANEL_BIT, TABLE_ROUTER } from "./shop.ts";

const here = furnishedShop();

const drawn = OPERATIONS.filter(({ id }) => /Picture$|^draw/.test(id));

/** The elements of a picture and every text in it. */
function readSvg(svgText: string) {
  const { elements, texts } = readBack(svgText);
  return { names: new Set(elements.map(({ name }) => name)), text: texts.join(" ") };
}

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
      const body = operation.takesJson ? bodyOf(operation, here.furnished.ids) : undefined;
      const url = urlOf(operation, here.furnished.ids);
      const ask = (query: string) =>
        here.shop.ask(method, `${url}?${query}`, body === undefined ? {} : { body });
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

describe("a picture", () => {
  test("as PNG is that wide, and not blank", async () => {
    const asked = `/v1/bits/${here.furnished.ids["bitId"]}/picture?format=png&widthPx=640`;
    const { width, data } = PNG.sync.read((await printed(here.shop, asked)).bytes);
    expect(width).toBe(640);
    const dark = data.filter((value, index) => index % 4 === 0 && value < 100).length;
    expect(dark).toBeGreaterThan(1000);
  });

  test("of a bit says its name whole, whatever it holds", async () => {
    const name = `Panel </title><script>alert(1)</script> אבג & "3½" 🪵`;
    const bit = await addBit(here.shop, { ...PANEL_BIT, name });
    const { text } = await here.shop.ask("GET", `/v1/bits/${bit.id}/picture`);
    const read = readSvg(text);
    expect(read.names.has("script")).toBe(false);
    expect(read.text).toContain("<script>alert(1)</script>");
  });

  test("of a plan shows what is set as the plan says it, in both systems", async () => {
    const { body } = await here.shop.ask("POST", "/v1/plans/preview", { body: planAsked() });
    const { text } = await here.shop.ask("POST", "/v1/plans/picture", { body: planAsked() });
    const last = body.passes.at(-1);
    expect(readSvg(text).text).toContain(`${last.cutterMm} mm`);
    expect(text).toContain(`data-`);
    const inches = await here.shop.ask("POST", "/v1/plans/picture?units=imperial", { body: planAsked() });
    expect(readSvg(inches.text).text).toMatch(/\d in\b|″|\d"/);
    expect(readSvg(inches.text).text).not.toMatch(/\d mm/);
  });

  test("of a plan that must not be run says so and shows no setting", async () => {
    const { text } = await here.shop.ask("POST", "/v1/plans/picture", {
      body: planAsked({ mounting: "handheld" }),
    });
    const read = readSvg(text).text;
    expect(read).toMatch(/must not be run|do not run/i);
    expect(read).not.toMatch(/Set the dial|Set the bit/);
  });

  test("of a stored plan is refused once it would be another plan", async () => {
    const bit = await addBit(here.shop);
    const asked = planAsked({ bit: { id: bit.id } });
    const stored = await made(here.shop, "/v1/plans", asked);
    expect((await here.shop.ask("GET", `/v1/plans/${stored.id}/picture`)).status).toBe(200);
    const changed = await here.shop.ask("PATCH", `/v1/bits/${bit.id}`, {
      body: { markedMaxRpm: 9000 },
      headers: { "If-Match": '"1"' },
    });
    expect(changed.status, changed.text).toBe(200);
    const { status, body } = await here.shop.ask("GET", `/v1/plans/${stored.id}/picture`);
    expect([status, body.code]).toEqual([409, "result-changed"]);
  });

  test("of an approved setting names it, and is refused when it is no longer in force", async () => {
    const id = here.furnished.ids["approvalId"];
    const { body: approval } = await here.shop.ask("GET", `/v1/approvals/${id}`);
    const { status, text } = await here.shop.ask("GET", `/v1/approvals/${id}/picture`);
    expect([status, approval.state]).toEqual([200, "issued"]);
    expect(readSvg(text).text).toContain(id);
    here.now = new Date("2030-01-01T00:00:00Z");
    const late = await here.shop.ask("GET", `/v1/approvals/${id}/picture`);
    here.now = AT;
    expect([late.status, late.body.code]).toEqual([409, "invalid-state"]);
  });

  test("of an approved setting holds a signed statement of what it shows, which fits no other picture", async () => {
    const id = here.furnished.ids["approvalId"] ?? "";
    const { text } = await here.shop.ask("GET", `/v1/approvals/${id}/picture?kind=limits&units=imperial`);
    const [whole = "", jws = ""] = /<metadata>([\w.-]+)<\/metadata>/.exec(text) ?? [];
    const { body: keys } = await here.shop.ask("GET", "/.well-known/jwks.json", { key: null });
    // jose, a general-purpose library, checks the signature.
    const { payload } = await compactVerify(jws, createLocalJWKSet(keys));
    const said = JSON.parse(new TextDecoder().decode(payload));
    const bare = text.replace(whole, "");
    expect(said).toMatchObject({ sub: id, picture: { kind: "limits", units: "imperial" } });
    expect(said.picture.sha256).toBe(createHash("sha256").update(bare).digest("hex"));
    const { body: approval } = await here.shop.ask("GET", `/v1/approvals/${id}`);
    expect(said.picture.resultDigest).toBe(approval.resultDigest);
    expect(said.exp).toBe(Math.floor(Date.parse(approval.validUntil) / 1000));
  });

  test("of a place shows what is out and what is held", async () => {
    const drawer = await made(here.shop, "/v1/places", { name: "Drawer 9", kind: "drawer" });
    const slot = async (name: string) =>
      made(here.shop, "/v1/places", { name, kind: "position", insideId: drawer.id });
    const one = await addBit(here.shop, {
      ...PANEL_BIT,
      name: "Lent one",
      homePlaceId: (await slot("A")).id,
    });
    const other = await addBit(here.shop, {
      ...PANEL_BIT,
      name: "Held one",
      homePlaceId: (await slot("B")).id,
    });
    await slot("C");
    const member = await addSomebody(here.shop, "member");
    await made(here.shop, "/v1/loans", { bitId: one.id, personId: member.id });
    await made(here.shop, `/v1/bits/${other.id}/hold`, { reason: "A chipped tooth." });
    const { text } = await here.shop.ask("GET", `/v1/places/${drawer.id}/picture`);
    const read = readSvg(text).text;
    for (const said of ["Drawer 9", "A", "B", "C", "Lent one", "out", "held: do not use"])
      expect(read).toContain(said);
  });

  test("of a router never shows a bit at a mark that breaks its limit", async () => {
    const bit = await addBit(here.shop, { ...PANEL_BIT, name: "Slow one", markedMaxRpm: 5000 });
    const router = await made(here.shop, "/v1/routers", TABLE_ROUTER);
    const { text } = await here.shop.ask("GET", `/v1/routers/${router.id}/picture?ids=${bit.id}`);
    expect(readSvg(text).text).toMatch(/Slow one[\s\S]*(not|no mark)/i);
    const wrong = await here.shop.ask("GET", `/v1/routers/${router.id}/picture?ids=bit_0`);
    expect([wrong.status, wrong.body.errors[0].pointer]).toEqual([422, "/ids"]);
  });

  test("of a kind that the thing has not is refused with those it has", async () => {
    const { status, body } = await here.shop.ask(
      "GET",
      `/v1/bits/${here.furnished.ids["bitId"]}/picture?kind=limits`,
    );
    expect([status, body.errors[0].pointer]).toEqual([422, "/kind"]);
    expect(body.errors[0].accepted).toContain("bit");
  });
});
