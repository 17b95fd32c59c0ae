import { createClient, NOT_MODIFIED } from "@rimwise/client";
import { afterAll, beforeAll, expect, test } from "vitest";
import { PHOTOGRAPH } from "../contract/furnish.ts";
import { openShop, type Shop } from "../contract/shop.ts";

const STRAIGHT = {
  form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25 },
  shankDiameterMm: 12.7,
  wings: 2,
} as const;

let shop: Shop;
let baseUrl: string;
beforeAll(async () => {
  shop = await openShop({}, undefined, afterAll);
  baseUrl = await shop.app.listen({ port: 0, host: "127.0.0.1" });
});
const client = () => createClient({ baseUrl, key: async () => shop.managerKey });

test("labels and files are text, by type and in fact, and files come as streams too", async () => {
  const bit = await client().bits.create({ ...STRAIGHT, name: "Straight, labelled" });
  const label: string = await client().bits.label(bit.id);
  expect(label).toMatch(/^<svg/);
  const counters: string = await client().health.getMetrics();
  expect(counters).toContain("# TYPE");
  const whole: string = await client().bits.export();
  const stream: ReadableStream<Uint8Array> = await client().bits.export({ asStream: true });
  expect(await new Response(stream).text()).toBe(whole);
});

test("a record is read again only if it has changed", async () => {
  const { bits } = client();
  const { data: bit, response } = await bits
    .create({ ...STRAIGHT, name: "Straight, read twice" })
    .withResponse();
  for (const ifNoneMatch of [bit.version, response.etag ?? ""])
    expect(await bits.get(bit.id, { ifNoneMatch })).toBe(NOT_MODIFIED);
  const changed = await bits.update(bit.id, { wings: 3 }, bit.version);
  expect(await bits.get(bit.id, { ifNoneMatch: bit.version })).toEqual(changed);
});

test("a list gives a page, so many records, or all one by one", async () => {
  const { bits } = client();
  for (const number of [1, 2, 3]) await bits.create({ ...STRAIGHT, name: `Bit in a list ${number}` });
  const query = { q: "in a list", limit: 2, state: undefined };
  const page = await bits.list(query);
  expect(page.data).toHaveLength(2);
  expect(page.nextCursor).toEqual(expect.any(String));
  expect(await bits.list(query).all({ limit: 10 })).toHaveLength(3);
  const { response } = await bits.list(query).withResponse();
  expect(response.headers.get("link")).toContain('rel="next"');
});

test("bytes are taken as a file, and what no method stands for is sent too", async () => {
  const data = new TextEncoder().encode(
    "name,kind,diameterMm,cuttingLengthMm,shankDiameterMm,wings\nFrom bytes,straight,12.7,30,12.7,2\n",
  );
  expect(await client().bits.import({ contentType: "text/csv", data })).toMatchObject({ created: 1 });
  const answer = await client().request<{ version: string }>({ method: "GET", path: "/version" });
  expect(answer.version).toMatch(/^\d/);
});

test("a photograph is taken as the bytes that it is, and as text in a record", async () => {
  const { bits, photographs } = client();
  const { id } = await bits.create({ ...STRAIGHT, name: "Straight, photographed" });
  const data = Uint8Array.from(Buffer.from(PHOTOGRAPH.base64, "base64"));
  const sent = await photographs.create(id, { contentType: "image/png", data });
  const inRecord = await photographs.create(id, { mediaType: "image/png", base64: PHOTOGRAPH.base64 });
  const [first, second] = await Promise.all([sent, inRecord].map((each) => photographs.content(each.id)));
  expect(first?.base64).toEqual(expect.any(String));
  expect(first?.base64).toBe(second?.base64);
});

test("the service learns which client calls", async () => {
  const served = await new Promise<string | undefined>((resolve) => {
    shop.app.server.once("request", ({ headers }) => resolve(headers["user-agent"]));
    void client().me.get();
  });
  expect(served).toMatch(/^rimwise-client\/\d+\.\d+\.\d+$/);
});
