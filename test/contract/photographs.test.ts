import { deflateSync } from "node:zlib";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addBit, addSomebody, lastSequence } from "./crib.ts";
import { openShop, type Shop } from "./shop.ts";

const PIXEL =
  "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==";

/** The end of a PNG (PNG specification, IEND). */
const PNG_END = "0000000049454e44ae426082";

/** A WebP of one pixel (RFC 9649: RIFF, WEBP, VP8L), from memory. */
const WEBP_PIXEL = "UklGRhoAAABXRUJQVlA4TA0AAAAvAAAAEAcQERGIiP4HAA==";

/** The most bytes of a photograph, as the API says: 4 MiB. */
const MOST_BYTES = 4 * 1024 * 1024;

/** A black PNG of this size (PNG specification, IHDR and 7.2: a filter byte and a byte for each pixel of a row). */
function pngOf(width: number, height: number): string {
  const head = Buffer.alloc(33);
  Buffer.from("89504e470d0a1a0a0000000d49484452", "hex").copy(head);
  head.writeUInt32BE(width, 16);
  head.writeUInt32BE(height, 20);
  head[24] = 8;
  const data = deflateSync(Buffer.alloc(height * (1 + width)));
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const around = [length, Buffer.from("IDAT"), data, Buffer.alloc(4)];
  return Buffer.concat([head, ...around, Buffer.from(PNG_END, "hex")]).toString("base64");
}

/** A PNG that says it is 9 × 9 and is 3000 × 3000. */
function lyingPng(): string {
  const bytes = Buffer.from(pngOf(3000, 3000), "base64");
  bytes.writeUInt32BE(9, 16);
  bytes.writeUInt32BE(9, 20);
  return bytes.toString("base64");
}

/** A JPEG of 16 × 16 (ITU-T T.81: SOI, APP1 with a small image of its own, SOF0, SOS, data, EOI). */
function jpegOf(end: "ffd9" | ""): string {
  const inner = "ffd8ffda00021234ffd9";
  const app1 = `ffe1${(2 + inner.length / 2).toString(16).padStart(4, "0")}${inner}`;
  const frame = "ffc0000b080010001001011100";
  const scan = "ffda0008010100003f00d2cf20";
  return Buffer.from(`ffd8${app1}${frame}${scan}${end}`, "hex").toString("base64");
}

describe("photographs", () => {
  let shop: Shop;
  let bitId: string;

  beforeAll(async () => {
    shop = await openShop({}, undefined, (release) => afterAll(release));
    bitId = (await addBit(shop)).id;
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
    ["image/png", PIXEL],
    ["image/png", pngOf(10_000, 1)],
    ["image/jpeg", jpegOf("ffd9")],
    ["image/webp", WEBP_PIXEL],
  ])("are taken if %s is what the bytes are", async (mediaType, base64) => {
    const { status, text } = await add({ mediaType, base64 });
    expect(status, text).toBe(201);
  });

  const LONG = "A".repeat(Math.ceil(MOST_BYTES / 3) * 4 + 4);
  test.each([
    ["a PNG that says it is a JPEG", "image/jpeg", PIXEL, "/mediaType", /image\/png/],
    ["a page that says it is a PNG", "image/png", btoa("<html><script>1</script>"), "/base64", /image\/webp/],
    ["a head cut short", "image/png", PIXEL.slice(0, 16), "/base64", /image\/png/],
    ["a PNG cut short", "image/png", PIXEL.slice(0, 80), "/base64", /a whole image/],
    ["a JPEG cut short, but for the small one in it", "image/jpeg", jpegOf(""), "/base64", /a whole image/],
    ["a WebP cut short", "image/webp", WEBP_PIXEL.slice(0, 44), "/base64", /a whole image/],
    ["base64 cut short", "image/png", PIXEL.slice(0, -1), "/base64", /four/],
    ["what is no base64", "image/png", "äöü!", "/base64", /base64/],
    ["too many bytes", "image/png", LONG, "/base64", /4 MiB/],
    ["too many pixels", "image/png", pngOf(10_001, 1), "/base64", /10000/],
    ["too many pixels in all", "image/png", pngOf(9000, 9000), "/base64", /64 million/],
    ["a picture of another size", "image/png", lyingPng(), "/base64", /size it says/],
    ["another type", "image/svg+xml", btoa("<svg/>"), "/mediaType", /image\/jpeg/],
  ])(
    "%s is refused by its field, with what is accepted, and changes nothing",
    async (_what, mediaType, base64, pointer, accepted) => {
      const before = await lastSequence(shop);
      const answer = await add({ mediaType, base64 });
      expect(answer.status, answer.text).toBe(422);
      expect(answer.body.errors).toMatchObject([{ pointer, accepted: expect.stringMatching(accepted) }]);
      expect(await lastSequence(shop)).toBe(before);
    },
  );

  test("are removed only by who knows their version", async () => {
    const { body } = await add({ mediaType: "image/png", base64: PIXEL });
    const remove = (headers: Record<string, string>) =>
      shop.ask("DELETE", `/v1/photographs/${body.id}`, { headers });
    expect((await remove({})).status).toBe(428);
    expect((await remove({ "If-Match": '"2"' })).status).toBe(412);
    expect((await shop.ask("GET", `/v1/photographs/${body.id}/content`)).status).toBe(200);
    expect((await remove({ "If-Match": '"1"' })).status).toBe(204);
  });

  test("are seen by members, who may neither add nor remove one", async () => {
    const { body } = await add({ mediaType: "image/png", base64: PIXEL });
    const { key } = await addSomebody(shop, "member");
    expect((await shop.ask("GET", `/v1/photographs/${body.id}/content`, { key })).status).toBe(200);
    const added = await shop.ask("POST", `/v1/bits/${bitId}/photographs`, {
      body: { mediaType: "image/png", base64: PIXEL },
      key,
    });
    expect(added.status).toBe(403);
    const headers = { "If-Match": '"1"' };
    expect((await shop.ask("DELETE", `/v1/photographs/${body.id}`, { headers, key })).status).toBe(403);
  });

  test("are twelve of a bit at most, and the same request again adds none", async () => {
    const other = await addBit(shop);
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

  test("are twelve at most even if two add one at the same moment", async () => {
    const other = await addBit(shop);
    const body = { mediaType: "image/png", base64: PIXEL };
    const addOne = () => shop.ask("POST", `/v1/bits/${other.id}/photographs`, { body });
    for (let index = 0; index < 11; index += 1) await addOne();
    const answers = await Promise.all([addOne(), addOne(), addOne()]);
    expect(answers.map(({ status }) => status).sort()).toEqual([201, 409, 409]);
    const { body: list } = await shop.ask("GET", `/v1/photographs?bitId=${other.id}`);
    expect(list.data).toHaveLength(12);
  });
});
