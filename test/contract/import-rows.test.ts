import { afterAll, describe, expect, test } from "vitest";
import { bitsOf, eventsOf, sendFile, straights } from "./import-files.ts";
import { openShop, PANEL_BIT } from "./shop.ts";

describe("a row with an id", () => {
  const ID = `bit_${"0123456789abcdef".repeat(2)}`;

  test("makes a bit under that id if there is none", async () => {
    const shop = await openShop();
    const { body } = await sendFile(shop, straights(["Kept"], { id: ID }));
    expect(body).toMatchObject({ created: 1 });
    expect((await shop.ask("GET", `/v1/bits/${ID}`)).body).toMatchObject({
      id: ID,
      name: "Kept",
      version: 1,
    });
  });

  test("changes what its columns say, and nothing of what has no column", async () => {
    const shop = await openShop();
    const { body: bit } = await shop.ask("POST", "/v1/bits", { body: PANEL_BIT });
    const { body } = await sendFile(shop, `id,massG,notes\n${bit.id},12 oz,\n`);
    expect(body).toMatchObject({ changed: 1, created: 0 });
    const { notes: _, ...rest } = PANEL_BIT;
    const changed = (await shop.ask("GET", `/v1/bits/${bit.id}`)).body;
    // International avoirdupois ounce, 28.349523125 g (NIST Handbook 44, Appendix C; from memory).
    expect(changed).toMatchObject({ ...rest, massG: 12 * 28.349523125, version: 2 });
    expect(changed).not.toHaveProperty("notes");
  });

  test("takes another form whole", async () => {
    const shop = await openShop();
    const { body: bit } = await shop.ask("POST", "/v1/bits", { body: PANEL_BIT });
    await sendFile(shop, `id,kind,diameterMm,cuttingLengthMm,massG\n${bit.id},straight,20,30,90\n`);
    expect((await shop.ask("GET", `/v1/bits/${bit.id}`)).body.form).toEqual({
      kind: "straight",
      diameterMm: 20,
      cuttingLengthMm: 30,
    });
  });

  test("of what is kept already makes no event and no new version", async () => {
    const shop = await openShop();
    const { body: bit } = await shop.ask("POST", "/v1/bits", { body: PANEL_BIT });
    const before = await eventsOf(shop);
    const { body } = await sendFile(shop, `id,massG\n${bit.id},340\n`);
    expect(body).toMatchObject({ rows: 1, unchanged: 1, changed: 0 });
    expect(await eventsOf(shop)).toEqual(before);
    expect((await shop.ask("GET", `/v1/bits/${bit.id}`)).body).toEqual(bit);
  });

  test.each([
    ["twice in a file", `id,massG\n${ID},1\n${ID},2\n`, 3, "id"],
    ["that is none", "id,massG\nbit_1,340\n", 2, "id"],
  ])("%s is refused", async (_what, file, line, column) => {
    const shop = await openShop();
    const { status, body } = await sendFile(shop, file);
    expect(status).toBe(422);
    expect(body.report.faults.at(-1)).toMatchObject({ line, column });
  });

  test("belongs to a place of the shop or to none", async () => {
    const shop = await openShop();
    const place = (await shop.ask("POST", "/v1/places", { body: { name: "Drawer 1", kind: "drawer" } })).body;
    expect((await sendFile(shop, straights(["A"], { homePlaceId: place.id }))).status).toBe(200);
    const { status, body } = await sendFile(shop, straights(["A"], { homePlaceId: "place_none" }));
    expect(status).toBe(422);
    expect(body.report.faults).toMatchObject([{ line: 2, column: "homePlaceId" }]);
  });
});

describe("quantities are read as people write them", () => {
  const opened = openShop({}, undefined, afterAll);
  // One inch is 25.4 mm exactly (international inch, 1959); 200 m are 200 m.
  test.each([
    ["diameterMm", '"1/2"""', { form: { diameterMm: 12.7 } }],
    ["diameterMm", '1/2"', { form: { diameterMm: 12.7 } }],
    ["diameterMm", "1-1/4 in", { form: { diameterMm: 31.75 } }],
    ["diameterMm", "1.27 cm", { form: { diameterMm: 12.7 } }],
    ["diameterMm", " 12.7 ", { form: { diameterMm: 12.7 } }],
    ["markedMaxRpm", '"22,000 rpm"', { markedMaxRpm: 22_000 }],
    ["markedMaxRpm", "22000", { markedMaxRpm: 22_000 }],
    ["massG", "0.06 kg", { massG: 60 }],
    ["massG", "9 g", undefined],
    ["inspectionIntervalM", "0.2 km", undefined],
    ["inspectionIntervalM", "200 m", { inspectionIntervalM: 200 }],
    ["isHandFeedMarked", "Yes", { isHandFeedMarked: true }],
    ["isHandFeedMarked", "perhaps", undefined],
    ["diameterMm", '"12,7"', { form: { diameterMm: 12.7 } }],
    ["diameterMm", "12 oz", undefined],
    ["diameterMm", "-12", undefined],
    ["wings", "two", undefined],
    ["purchasedOn", "3/4/2026", undefined],
    ["segments", "{", undefined],
  ])("%s %s", async (column, cell, wanted) => {
    const shop = await opened;
    const columns = new Map(
      Object.entries({
        name: "A",
        kind: "straight",
        diameterMm: "12",
        cuttingLengthMm: "30",
        shankDiameterMm: "12.7",
        wings: "2",
      }),
    );
    columns.set(column, cell);
    const { status, body } = await sendFile(shop, `${[...columns.keys()]}\n${[...columns.values()]}\n`);
    if (wanted === undefined) {
      expect(status).toBe(422);
      const said = { message: expect.any(String), accepted: expect.stringMatching(/\w/) };
      expect(body.report.faults).toEqual([{ line: 2, column, ...said, given: cell }]);
    } else {
      expect(status).toBe(200);
      expect((await bitsOf(shop)).at(-1)).toMatchObject(wanted);
    }
  });
});
