import { expect, test } from "vitest";
import { addBit } from "./crib.ts";
import { openShop } from "./shop.ts";

const SPIRAL = { kind: "spiral-down-cut", diameterMm: 8, cuttingLengthMm: 25 };
const ROUND_OVER = { kind: "round-over", diameterMm: 25.4, radiusMm: 6.35, pilotDiameterMm: 12.7 };

async function shopWith(...bits: readonly object[]) {
  const shop = await openShop();
  const added = [];
  for (const bit of bits)
    added.push(await addBit(shop, { wings: 2, shankDiameterMm: 8, massG: undefined, ...bit }));
  const found = async (q: string) => {
    const { status, body } = await shop.ask("GET", `/v1/bits?${new URLSearchParams({ q })}`);
    expect(status).toBe(200);
    return body.data.map(({ name }: { name: string }) => name);
  };
  return { shop, added, found };
}

const straight = (name: string, diameterMm: number, more: object = {}) => ({
  name,
  form: { kind: "straight", diameterMm, cuttingLengthMm: 25 },
  ...more,
});

test.each([
  ["8mm spiral", ["Spiral"]],
  ["8 mm sprial", ["Spiral"]],
  ["downcut", ["Spiral"]],
  ["down-cut spiral 8", ["Spiral"]],
  ["rond over", ["Round-over"]],
  ["roundovr", ["Round-over"]],
  ["roundover", ["Round-over"]],
  ["stright 12", ["Straight 12"]],
  ["walrus", []],
])("%s finds %j", async (q, names) => {
  const { found } = await shopWith(
    { name: "Spiral", form: SPIRAL },
    { name: "Round-over", form: ROUND_OVER },
    straight("Straight 12", 12),
  );
  expect(await found(q)).toEqual(names);
});

test("a bit of that diameter comes before those that are near, or have it as another size", async () => {
  const { found, shop } = await shopWith(
    straight("By its shank", 12),
    straight("Nearly", 8.3, { shankDiameterMm: 6 }),
    straight("Exactly", 8, { shankDiameterMm: 6 }),
  );
  expect(await found("8 mm")).toEqual(["Exactly", "By its shank", "Nearly"]);
  const names: string[] = [];
  let cursor = "";
  do {
    const { body } = await shop.ask("GET", `/v1/bits?q=8+mm&limit=1${cursor && `&cursor=${cursor}`}`);
    names.push(...body.data.map(({ name }: { name: string }) => name));
    cursor = body.nextCursor ?? "";
  } while (cursor !== "");
  expect(names, "page by page too, each once").toEqual(["Exactly", "By its shank", "Nearly"]);
});

test("what is called by a word as it was typed comes before what was probably meant", async () => {
  const { found } = await shopWith(
    { name: "Round-over", form: ROUND_OVER },
    straight("Rond, the old one", 12, { notes: "over there" }),
  );
  expect(await found("rond over")).toEqual(["Rond, the old one", "Round-over"]);
});

test("a sharpened bit is still found by the size it was bought in, and by the one it has", async () => {
  const { shop, added, found } = await shopWith(straight("Half inch", 12.7), straight("Other", 20));
  const sharpen = (diameterMm: number) =>
    shop.ask("POST", `/v1/bits/${added[0].id}/sharpenings`, { body: { diameterMm } });
  for (const diameterMm of [12.1, 11.6]) expect((await sharpen(diameterMm)).status).toBe(201);
  for (const q of ["1/2", "12.7 mm straight", "diameter 12.7", "11.6 mm"])
    expect(await found(q), q).toEqual(["Half inch"]);
  const { body } = await shop.ask("GET", `/v1/bits/${added[0].id}`);
  expect(body).toMatchObject({ nominalDiameterMm: 12.7, form: { diameterMm: 11.6 } });
  const other = { body: { form: SPIRAL }, headers: { "If-Match": "*" } };
  const changed = await shop.ask("PATCH", `/v1/bits/${added[0].id}`, other);
  expect(changed.body).not.toHaveProperty("nominalDiameterMm");
  expect(await found("1/2")).toEqual([]);
});

test("a cursor that is none of this list's is refused", async () => {
  const { shop } = await shopWith();
  for (const cursor of ["5", "x.y", "1.2.3"]) {
    const encoded = Buffer.from(cursor).toString("base64url");
    expect((await shop.ask("GET", `/v1/bits?cursor=${encoded}`)).status).toBe(422);
  }
});
