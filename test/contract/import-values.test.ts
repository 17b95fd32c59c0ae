import { describe, expect, test } from "vitest";
import { bitsOf, CSV, sendFile } from "./import-files.ts";
import { openShop } from "./shop.ts";

const HEADER = "name;kind;diameterMm;cuttingLengthMm;shankDiameterMm;wings";
const DRY = { query: "?isDryRun=true" };

/** A file of one straight bit of this diameter, in cells that semicolons part. */
const straight = (diameter: string, more = "30;12 mm;2") => `${HEADER}\nA;straight;${diameter};${more}\n`;

type Fault = { column: string; given: string; nearest?: string; message: string; accepted: string };

describe("a quantity in an import", () => {
  // By the inch of 25.4 mm (NIST SP 811 appendix B.8), exactly.
  test.each([
    ["8,5 mm", 8.5],
    ["8,5", 8.5],
    ["12,70", 12.7],
    ["8 mm spiral", 8],
    ["8mm down-cut spiral", undefined],
    ["8 mm spiral-down-cut", 8],
    ["Ø 8 mm", 8],
    ["Ø8,5", 8.5],
    ["1/2-in", 12.7],
    ['1/2"', 12.7],
    ["3/8 in", 9.525],
    ["3/8 in dia.", 9.525],
    ["½ in", 12.7],
    ["0.375 in", 9.525],
    ["1,25 in", 31.75],
    ["0,95 cm", 9.5],
  ])("that is written %s is %s mm", async (text, mm) => {
    const shop = await openShop();
    const { status } = await sendFile(shop, straight(text));
    expect(status).toBe(mm === undefined ? 422 : 200);
    const bits = await bitsOf(shop);
    expect(bits.map(({ form }: { form: { diameterMm: number } }) => form.diameterMm)).toEqual(
      mm === undefined ? [] : [mm],
    );
  });

  test.each([
    ["1/2", /no unit.+inches or millimetres/],
    ["½", /no unit.+inches or millimetres/],
    ["3 1/2", /no unit/],
    ["1,234 mm", /may be 1234 or 1\.234/],
    ["1/2 in shank", /./],
    ["8 mm or so", /./],
    ["8 mm 10 mm", /./],
  ])("that is written %s is not guessed at", async (text, message) => {
    const { status, body } = await sendFile(await openShop(), straight(text));
    expect(status).toBe(422);
    expect(body.report.faults).toHaveLength(1);
    expect(body.report.faults[0]).toMatchObject({
      column: "diameterMm",
      given: text,
      message: expect.stringMatching(message),
    });
  });

  test("is shown in a dry run as it was read, and what may have been meant in inches says so", async () => {
    const shop = await openShop();
    const file = `${HEADER};markedMaxRpm;massG\nA;straight;3/8 in;25,4;0.5;2;22,000 rpm;1 oz\n`;
    const { status, body } = await sendFile(shop, file.replace(";0.5;", ";4;"), DRY);
    expect(status).toBe(200);
    expect(
      body.readings.map(({ column, given, read }: Record<string, string>) => [column, given, read]),
    ).toEqual([
      ["diameterMm", "3/8 in", "9.525 mm (3/8 in)"],
      ["cuttingLengthMm", "25,4", "25.4 mm (1 in)"],
      ["shankDiameterMm", "4", "4 mm (5/32 in)"],
      ["wings", "2", "2"],
      ["markedMaxRpm", "22,000 rpm", "22000 rpm"],
      ["massG", "1 oz", "28.349523125 g (1 oz)"],
    ]);
    const notes = body.readings.flatMap(({ column, note }: Record<string, string>) =>
      note ? [[column, note]] : [],
    );
    expect(notes).toEqual([["shankDiameterMm", expect.stringMatching(/"4 in", which is 101\.6 mm/)]]);
    expect(await bitsOf(shop)).toEqual([]);
    expect((await sendFile(shop, file.replace(";0.5;", ";4;"))).body).not.toHaveProperty("readings");
  });
});

describe("what is wrong with a file", () => {
  test("is all said in one round, each with what stands there and the nearest name", async () => {
    const file = [
      `${HEADER};toothMaterial;costAmount;costCurrency;homePlaceId`,
      "A;spiral down cut;8 mmm;30;12;two;solid carbid;12,50;eur;",
      "B;straight;8;30;12;0;;;;",
    ].join("\n");
    const { status, body } = await sendFile(await openShop(), file);
    expect(status).toBe(422);
    const found = body.report.faults.map(({ column, given, nearest }: Fault) => [column, given, nearest]);
    expect(found).toEqual([
      ["kind", "spiral down cut", "spiral-down-cut"],
      ["diameterMm", "8 mmm", undefined],
      ["wings", "two", undefined],
      ["toothMaterial", "solid carbid", "solid-carbide"],
      ["costCurrency", "eur", "EUR"],
      ["wings", "0", undefined],
    ]);
    expect(body.report.faults[0].message).toBe(
      '"spiral down cut" is not known here. Is spiral-down-cut meant?',
    );
  });

  test("in one cell does not hide what is wrong with another by its schema or its geometry", async () => {
    const file = `${HEADER};massG\nA;straight;500 mm;30;12;2;heavy\nB;straight;8;900 mm;12;2;heavy\n`;
    const { body } = await sendFile(await openShop(), file);
    const found = body.report.faults.map(({ column, given }: Fault) => [column, given]);
    expect(found).toEqual([
      ["massG", "heavy"],
      ["diameterMm", "500 mm"],
      ["massG", "heavy"],
      ["cuttingLengthMm", "900 mm"],
    ]);
  });

  test("of its columns names the nearest one", async () => {
    const { body } = await sendFile(await openShop(), "name,kind,diameter\nA,straight,8\n");
    expect(body.report.faults).toMatchObject([{ column: "diameter", nearest: "diameterMm" }]);
  });
});

describe("a file that a spreadsheet wrote", () => {
  test.each([
    ["semicolons", ";"],
    ["tabs", "\t"],
    ["commas", ","],
  ])("with %s between its cells is read, empty columns at its end and all", async (_what, sign) => {
    const shop = await openShop();
    const rows = [
      HEADER.split(";"),
      ["A", "straight", "8", "30", "12", "2"],
      ["B", "straight", "9", "30", "12", "2"],
    ];
    const [header = "", first = "", second = ""] = rows.map((cells) => cells.join(sign));
    const file = `${header}${sign}${sign}\r\n${first}${sign}${sign}${sign}\r\n${second}\r\n`;
    const { status, body } = await sendFile(shop, file);
    expect([status, body.created]).toEqual([200, 2]);
  });

  test("keeps a comma within a cell that semicolons part", async () => {
    const shop = await openShop();
    await sendFile(shop, `${HEADER};notes\nA, left;straight;8;30;12;2;one, two\n`);
    expect(await bitsOf(shop)).toMatchObject([{ name: "A, left", notes: "one, two" }]);
  });
});

describe("a file that is refused is never answered with 200", () => {
  const refused = straight("eight");

  test.each([
    ["all or nothing", ""],
    ["all or nothing, as a dry run", "?isDryRun=true"],
    ["row by row", "?mode=row-by-row"],
    ["row by row, as a dry run", "?mode=row-by-row&isDryRun=true"],
  ])("%s", async (_what, query) => {
    const shop = await openShop();
    for (const file of [refused, "name,colour\nA,red\n", ""]) {
      const { status, body } = await sendFile(shop, file, { query, type: CSV });
      expect([status, body.code]).toEqual([422, "import-not-valid"]);
      expect(body.report.faults.length).toBeGreaterThan(0);
    }
    expect(await bitsOf(shop)).toEqual([]);
  });
});
