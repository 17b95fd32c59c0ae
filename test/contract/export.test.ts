import { bitFaults, FORMS, TOOTH_MATERIALS } from "@rimwise/domain";
import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { afterAll, describe, expect, test } from "vitest";
import { formsOf } from "../properties/form-arbitraries.ts";
import { exportFrom, NDJSON, sendFile } from "./import-files.ts";
import { openShop, PANEL_BIT } from "./shop.ts";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const maybe = <Value>(value: fc.Arbitrary<Value>) => fc.option(value, { nil: undefined });

/** What is refused in every text; `text.test.ts` says so. */
const NO_TEXT = /[\u202A-\u202E\u2066-\u2069]|(?![\t\n\r])\p{Cc}/gu;

/** What spreadsheets and parsers trip over, at the start and anywhere. */
const texts = (maxLength: number) =>
  fc
    .tuple(
      fc.constantFrom(
        "",
        "=",
        "+",
        "-",
        "@",
        "\t",
        "\r",
        "\n",
        "'",
        "''=",
        '"',
        ",",
        ";",
        "\uFEFF",
        "＝",
        " ",
        "0",
        "1e3",
      ),
      fc.oneof(
        fc.string({ unit: "binary", maxLength: 20 }),
        fc.constantFrom("", '"', '""', "\r\n", "'=1", "x"),
      ),
    )
    .map(([first, rest]) =>
      [...(first + rest).replaceAll(NO_TEXT, "")].slice(0, maxLength).join("").normalize("NFC"),
    );

/** Any bit that may stand on a rack, under any name. */
const bits = fc
  .constantFrom(...FORMS)
  .chain((form) =>
    fc.record({
      name: texts(100).filter((text) => /\S/u.test(text)),
      form: formsOf(form),
      shankDiameterMm: number(3, 20),
      wings: fc.integer({ min: 1, max: 12 }),
      notes: maybe(texts(2000)),
      // A hundredfold of what some outlines weigh: a part of them is refused, and the rest is enough.
      massG: fc.oneof(
        { weight: 3, arbitrary: fc.constant(undefined) },
        { weight: 1, arbitrary: number(10, 400) },
      ),
      runOutMm: maybe(number(0, 1)),
      stickOutMm: maybe(number(0, 60)),
      markedMaxRpm: maybe(number(1000, 60_000)),
      isHandFeedMarked: maybe(fc.boolean()),
      toothMaterial: maybe(fc.constantFrom(...TOOTH_MATERIALS)),
      purchasedOn: maybe(fc.constantFrom("2024-02-29", "1999-12-31")),
      cost: maybe(fc.record({ amount: number(0, 1_000_000), currency: fc.constantFrom("EUR", "USD") })),
      smallestUsableDiameterMm: maybe(number(1, 200)),
      inspectionIntervalDays: maybe(fc.integer({ min: 1, max: 3650 })),
      inspectionIntervalM: maybe(number(1, 1_000_000)),
    }),
  )
  .map((bit) => Object.fromEntries(Object.entries(bit).filter(([, value]) => value !== undefined)))
  .filter((bit) => bitFaults(Object(bit)).length === 0);

const ndjson = (lines: readonly object[]) => lines.map((line) => `${JSON.stringify(line)}\n`).join("");

describe("an export", () => {
  test("imported into another shop exports there byte for byte the same, in both formats", async () => {
    const from = await openShop({}, undefined, afterAll);
    const to = await openShop({}, undefined, afterAll);
    let tried = 0;
    let created = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(bits, { minLength: 1, maxLength: 12 }), async (rack) => {
        // Where a form's usual cut cannot be planned, the bit is refused.
        const query = "?mode=row-by-row&isRepeat=true";
        const put = await sendFile(from, ndjson(rack), { type: NDJSON, query });
        tried += rack.length;
        created += put.status === 200 ? put.body.created : 0;
        const csv = await exportFrom(from);
        expect((await sendFile(to, csv)).status).toBe(200);
        expect(await exportFrom(to)).toBe(csv);
        expect(await exportFrom(to, "ndjson")).toBe(await exportFrom(from, "ndjson"));
        expect((await sendFile(from, csv)).body).toMatchObject({ created: 0, changed: 0, refused: 0 });
      }),
      { numRuns: 12 },
    );
    expect(created).toBeGreaterThan(tried / 4);
    const empty = await openShop();
    const lines = await exportFrom(from, "ndjson");
    expect((await sendFile(empty, lines, { type: NDJSON })).status).toBe(200);
    expect(await exportFrom(empty, "ndjson")).toBe(lines);
  }, 120_000);

  test("is CSV as RFC 4180 has it: one header, as many cells in each row, CRLF", async () => {
    const shop = await openShop();
    await sendFile(shop, ndjson([PANEL_BIT, { ...PANEL_BIT, name: 'A "quoted", name' }]), { type: NDJSON });
    const csv = await exportFrom(shop);
    expect(csv.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
    const rows: Record<string, string>[] = parse(csv, { columns: true, record_delimiter: "\r\n" });
    expect(rows.map(({ name }) => name)).toEqual([PANEL_BIT.name, 'A "quoted", name']);
    expect(rows[0]).toMatchObject({ kind: "panel-raising", diameterMm: "88.9", massG: "340", wings: "2" });
  });

  // The characters of OWASP, "CSV Injection" (from memory), and their full-width forms.
  const signs = ["=1+1", "+1", "-1", "@SUM(A1)", "'=1", "＝1", "＋1", "－1", "＠1"];
  test.each([
    ...signs.map((name) => [name, `'${name}`] as const),
    ...["\t", "\r", "\n"].map((start) => [`${start}=1`, `'${start}'=1`] as const),
    // Cut at semicolons, as where decimals are written with a comma, or at tabs, whatever the quotes say.
    ...[";", "\t", "\n"].map((cut) => [`a${cut}=1+1${cut}"@x"`, `a${cut}'=1+1${cut}'"@x"`] as const),
  ])("makes %j harmless, and takes it back on import", async (name, cell) => {
    const shop = await openShop();
    await sendFile(shop, ndjson([{ ...PANEL_BIT, name, notes: name }]), { type: NDJSON });
    const csv = await exportFrom(shop);
    const rows: Record<string, string>[] = parse(csv, { columns: true, record_delimiter: "\r\n" });
    expect(rows[0]?.["name"]).toBe(cell);
    expect(rows[0]?.["notes"]).toBe(cell);
    expect((await sendFile(shop, csv)).body).toMatchObject({ unchanged: 1 });
  });

  test("distinguishes an empty note from none", async () => {
    const shop = await openShop();
    const { notes: _, ...rest } = PANEL_BIT;
    await sendFile(shop, ndjson([rest, { ...rest, notes: "" }]), { type: NDJSON });
    expect((await sendFile(shop, await exportFrom(shop))).body).toMatchObject({ unchanged: 2 });
  });

  test("takes a bit back to what it was when it was exported", async () => {
    const shop = await openShop();
    const { body: bit } = await shop.ask("POST", "/v1/bits", { body: PANEL_BIT });
    const csv = await exportFrom(shop);
    const body = { notes: null, massG: 338, markedMaxRpm: 9000, runOutMm: 0.02 };
    await shop.ask("PATCH", `/v1/bits/${bit.id}`, { body, headers: { "If-Match": '"1"' } });
    expect((await sendFile(shop, csv)).body).toMatchObject({ changed: 1 });
    const { updatedAt: _, ...kept } = bit;
    expect((await shop.ask("GET", `/v1/bits/${bit.id}`)).body).toMatchObject({ ...kept, version: 3 });
    expect(await exportFrom(shop)).toBe(csv);
  });

  test("leaves what history made of a bit as it is", async () => {
    const shop = await openShop();
    const { body: bit } = await shop.ask("POST", "/v1/bits", { body: PANEL_BIT });
    const csv = await exportFrom(shop);
    await shop.ask("POST", `/v1/bits/${bit.id}/hold`, { body: { reason: "A chipped edge." } });
    await sendFile(shop, csv.replace(",340,", ",341,"));
    expect((await shop.ask("GET", `/v1/bits/${bit.id}`)).body).toMatchObject({ massG: 341, state: "held" });
  });

  test("is of many pages, each bit once", async () => {
    const shop = await openShop();
    const rack = Array.from({ length: 250 }, (_, index) => ({ ...PANEL_BIT, name: `Panel ${index}` }));
    await sendFile(shop, ndjson(rack), { type: NDJSON });
    const names = (await exportFrom(shop, "ndjson"))
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line).name);
    expect(new Set(names).size).toBe(250);
    expect(names).toHaveLength(250);
  });
});
