import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addBit, made } from "./crib.ts";
import { sendFile, straights } from "./import-files.ts";
import { openShop, PANEL_BIT, type Shop, TABLE_ROUTER } from "./shop.ts";

let shop: Shop;
beforeAll(async () => {
  shop = await openShop({}, () => new Date(), afterAll);
});

const numberOf = async (id: string): Promise<number> =>
  (await shop.ask("GET", `/v1/bits/${id}/number`)).body.number;

describe("the shop's own number of a bit", () => {
  test("is the next one, is another for each of a kind, and finds it", async () => {
    const [one, two] = [await addBit(shop), await addBit(shop)];
    const [first, second] = [await numberOf(one.id), await numberOf(two.id)];
    expect(second).toBe(first + 1);
    const { body } = await shop.ask("GET", `/v1/bits?number=${second}`);
    expect(body.data.map(({ id }: { id: string }) => id)).toEqual([two.id]);
  });

  test("is no two bits', though many are put on the rack at once and by a file", async () => {
    const ids: string[] = (await Promise.all(Array.from({ length: 20 }, () => addBit(shop)))).map(
      ({ id }) => id,
    );
    await sendFile(shop, straights(Array.from({ length: 30 }, (_, index) => `Straight ${index}`)));
    const { body } = await shop.ask("GET", "/v1/bits?limit=200");
    const all = await Promise.all(body.data.map(({ id }: { id: string }) => numberOf(id)));
    expect(all.length).toBeGreaterThanOrEqual(ids.length + 30);
    expect(new Set(all).size).toBe(all.length);
    expect(Math.max(...all)).toBe(all.length);
  });

  test("stays when the bit is changed or retired", async () => {
    const bit = await addBit(shop);
    const number = await numberOf(bit.id);
    await shop.ask("PATCH", `/v1/bits/${bit.id}`, {
      body: { notes: "Top drawer." },
      headers: { "If-Match": "*" },
    });
    await made(shop, `/v1/bits/${bit.id}/retire`, { reason: "A tip came off." });
    await addBit(shop);
    expect(await numberOf(bit.id)).toBe(number);
  });

  test("is on its label, in the picture of its rack and on a wall chart", async () => {
    const place = await made(shop, "/v1/places", { name: "Peg 3", kind: "position" });
    const router = await made(shop, "/v1/routers", TABLE_ROUTER);
    const bit = await addBit(shop, { ...PANEL_BIT, homePlaceId: place.id });
    const said = `No. ${await numberOf(bit.id)}`;
    for (const path of [
      `/v1/bits/${bit.id}/label`,
      `/v1/bits/labels?ids=${bit.id}`,
      `/v1/places/${place.id}/picture`,
      `/v1/routers/${router.id}/printout?format=text&ids=${bit.id}`,
    ])
      expect((await shop.ask("GET", path)).text, path).toContain(said);
  });

  test("is not there for what is no bit", async () => {
    expect((await shop.ask("GET", "/v1/bits/bit_0/number")).status).toBe(404);
    expect((await shop.ask("GET", "/v1/bits?number=0")).body.errors[0].pointer).toBe("/number");
  });
});
