import { deflateSync } from "node:zlib";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openShop, PANEL_BIT, type Shop } from "./shop.ts";

const PIXEL =
  "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==";

/** The head of a PNG of this size (PNG specification, IHDR), with an image that is not worth looking at. */
function pngOf(width: number, height: number): string {
  const head = Buffer.alloc(33);
  Buffer.from("89504e470d0a1a0a0000000d49484452", "hex").copy(head);
  head.writeUInt32BE(width, 16);
  head.writeUInt32BE(height, 20);
  head[24] = 8;
  return Buffer.concat([head, deflateSync(Buffer.alloc(10))]).toString("base64");
}

describe("photographs", () => {
  let shop: Shop;
  let bitId: string;

  beforeAll(async () => {
    shop = await openShop({}, undefined, (release) => afterAll(release));
    bitId = (await shop.ask("POST", "/v1/bits", { body: PANEL_BIT })).body.id;
  });

  const add = (body: object, headers: Record<string, string> = {}) =>
    shop.ask("POST", `/v1/bits/${bitId}/photographs`, { body, headers });

  test("are read back as they came, and neither lists nor events carry their bytes", async () => {
    const { status, body } = await add({ mediaType: "image/png", base64: PIXEL, caption: "The face" });
    expect(status).toBe(201);
    const { body: content } = await shop.ask("GET", `/v1/photographs/${body.id}/content`);
    expect(content).toEqual({ mediaType: "image/png", base64: PIXEL });
    const list = await shop.ask("GET", `/v1/photographs?bitId=${bitId}`);
    const events = await shop.ask("GET", `/v1/events?subjectId=${body.id}`);
    for (const { text } of [list, events]) expect(text).not.toContain(PIXEL.slice(20, 60));
    const removed = await shop.ask("DELETE", `/v1/photographs/${body.id}`, {
      headers: { "If-Match": '"1"' },
    });
    expect(removed.status).toBe(204);
    expect((await shop.ask("GET", `/v1/photographs/${body.id}/content`)).status).toBe(404);
  });

  test.each([
    ["a PNG that says it is a JPEG", { mediaType: "image/jpeg", base64: PIXEL }, "/mediaType"],
    [
      "a page that says it is a PNG",
      { mediaType: "image/png", base64: btoa("<html><script>1</script>") },
      "/base64",
    ],
    ["a head cut short", { mediaType: "image/png", base64: PIXEL.slice(0, 16) }, "/base64"],
    ["what is no base64", { mediaType: "image/png", base64: "äöü!" }, "/base64"],
    ["too many pixels", { mediaType: "image/png", base64: pngOf(10_001, 1) }, "/base64"],
    ["another type", { mediaType: "image/svg+xml", base64: btoa("<svg/>") }, "/mediaType"],
  ])("%s is refused by its field", async (_what, body, pointer) => {
    const answer = await add(body);
    expect(answer.status).toBe(422);
    expect(answer.body.errors).toMatchObject([{ pointer }]);
  });

  test("are twelve of a bit at most, and the same request again adds none", async () => {
    const { body: other } = await shop.ask("POST", "/v1/bits", { body: PANEL_BIT });
    const addOne = (key: string) =>
      shop.ask("POST", `/v1/bits/${other.id}/photographs`, {
        body: { mediaType: "image/png", base64: PIXEL },
        headers: { "Idempotency-Key": key },
      });
    for (let index = 0; index < 12; index += 1) {
      expect((await addOne(`p${index}`)).status).toBe(201);
      expect((await addOne(`p${index}`)).headers["idempotent-replayed"]).toBe("true");
    }
    const full = await addOne("p12");
    expect(full.status).toBe(409);
    expect(full.body.code).toBe("too-many-photographs");
  });
});

describe("the pages and labels", () => {
  test("are the same for everybody, allow nothing from elsewhere, and hold nothing of the shop", async () => {
    const { app } = await openShop();
    const shells = await Promise.all(
      ["/bits/a", "/bits/b", "/places/a", "/settings/a"].map((url) => app.inject({ url })),
    );
    expect(new Set(shells.map(({ body }) => body)).size).toBe(1);
    for (const { statusCode, headers } of shells) {
      expect(statusCode).toBe(200);
      const policy = String(headers["content-security-policy"]);
      expect(policy).toContain("default-src 'none'");
      expect(policy).toContain("script-src 'self'");
      expect(policy).not.toMatch(/unsafe|https?:|\*/);
      expect(headers["x-content-type-options"]).toBe("nosniff");
    }
    for (const url of [
      "/pages/shell.html",
      "/pages/..%2fpackage.json",
      "/pages/%2e%2e/package.json",
      "/pages/x.js",
    ]) {
      expect((await app.inject({ url })).statusCode, url).toBe(404);
    }
    expect((await app.inject({ method: "POST", url: "/bits/a" })).statusCode).toBe(405);
  });

  test("a label's text is never markup", async () => {
    const { ask } = await openShop();
    const name = 'A <b>"bold"</b> & \u0007 name';
    const { body } = await ask("POST", "/v1/bits", { body: { ...PANEL_BIT, name } });
    const { text, headers } = await ask("GET", `/v1/bits/${body.id}/label`);
    expect(headers["content-type"]).toMatch(/^image\/svg\+xml/);
    expect(text).not.toContain("<b>");
    expect(text).not.toContain("\u0007");
    expect(text).toContain("&lt;b&gt;");
    expect((await ask("GET", "/v1/bits/bit_nothing/label")).status).toBe(404);
  });
});
