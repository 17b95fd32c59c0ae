import { describe, expect, test } from "vitest";
import { bitsOf, CSV, NAMES, NDJSON, sendFile, straights } from "./import-files.ts";
import { openShop, PANEL_BIT } from "./shop.ts";

describe("newline-delimited JSON", () => {
  test("is one bit a line, checked like a request", async () => {
    const shop = await openShop();
    const bad = { ...PANEL_BIT, form: { ...PANEL_BIT.form, diameterMm: "88.9" }, colour: "red" };
    const lines = [PANEL_BIT, bad].map((each) => JSON.stringify(each));
    const file = `${lines.join("\n")}\n\n[1]\nnot JSON`;
    const { status, body } = await sendFile(shop, file, { type: NDJSON, query: "?mode=row-by-row" });
    expect(status).toBe(200);
    expect(body).toMatchObject({ rows: 4, created: 1, refused: 3 });
    const places = body.faults.map(({ line, column }: { line: number; column?: string }) => [line, column]);
    expect(places).toEqual([
      [2, "/colour"],
      [2, "/form/diameterMm"],
      [4, undefined],
      [5, undefined],
    ]);
    expect((await bitsOf(shop))[0]).toMatchObject(PANEL_BIT);
  });

  test("says all of a bit: what it does not say is taken away", async () => {
    const shop = await openShop();
    const { body: bit } = await shop.ask("POST", "/v1/bits", { body: PANEL_BIT });
    const { notes: _, ...rest } = PANEL_BIT;
    await sendFile(shop, JSON.stringify({ id: bit.id, ...rest }), { type: NDJSON });
    expect((await shop.ask("GET", `/v1/bits/${bit.id}`)).body).not.toHaveProperty("notes");
  });
});

describe("a file", () => {
  const shopWith = async (file: string | Buffer, type = CSV) => {
    const shop = await openShop();
    return { shop, ...(await sendFile(shop, file, { type })) };
  };

  test.each([
    ["with a byte-order mark", `\uFEFF${straights(NAMES)}`],
    ["with line feeds alone", straights(NAMES).replaceAll("\r\n", "\n")],
    ["without a line end at its end", straights(NAMES).trimEnd()],
    ["with blank lines and rows of empty cells", straights(NAMES).replaceAll("\r\n", "\r\n\r\n,,,,,\r\n")],
  ])("%s is read alike", async (_what, file) => {
    const { shop, body } = await shopWith(file);
    expect(body).toMatchObject({ created: 3 });
    expect((await bitsOf(shop)).map(({ name }: { name: string }) => name)).toEqual(NAMES);
  });

  test("whose cells hold line ends counts its lines as an editor does", async () => {
    const { body } = await shopWith(`name,notes,kind\r\n"A\r\nB","1\n2\r3",straight\r\n\r\nC,,dragon\r\n`);
    const lines = body.report.faults.map(({ line }: { line: number }) => line);
    expect([...new Set(lines)]).toEqual([2, 6]);
  });

  test("with other bytes than UTF-8 is refused with the line, and the next row is still read", async () => {
    const [header = "", ...rows] = straights(["A", "B\xe9", "C"]).split("\r\n");
    const { body } = await shopWith(Buffer.from([header, ...rows].join("\n"), "latin1"));
    expect(body.report).toMatchObject({ rows: 3, refused: 1, isComplete: true });
    expect(body.report.faults).toMatchObject([{ line: 3, message: "These bytes are not UTF-8." }]);
  });

  test.each([CSV, NDJSON])("%s with a row over 64 KiB is refused with the line", async (type) => {
    const long = `"${"x".repeat(65 * 1024)}"`;
    const file = type === CSV ? `${straights(NAMES)}${long}\r\n` : `{}\n{}\n{}\n{}\n${long}\n`;
    const { status, body } = await shopWith(file, type);
    expect(status).toBe(422);
    expect(body.report.faults.at(-1)).toMatchObject({ line: 5, accepted: "a row of at most 64 KiB" });
  });

  test("with one record of many lines over 64 KiB is read up to there", async () => {
    const many = Array.from({ length: 60 }, (_, index) => `Straight ${index}`);
    const { body } = await shopWith(`${straights(many)}"${`${"x".repeat(999)}\n`.repeat(100)}",a\n`);
    expect(body.report).toMatchObject({ rows: 60, refused: 0, isComplete: false });
    expect(body.report.faults).toMatchObject([{ line: 62, accepted: "a row of at most 64 KiB" }]);
  });

  test("with a quote that is never closed is read up to there", async () => {
    const { body } = await shopWith(`${straights(NAMES)}"Fourth,straight\r\n${"x".repeat(100)}\r\n`);
    expect(body.report).toMatchObject({ rows: 3, isComplete: false });
    expect(body.report.faults).toMatchObject([{ line: 5 }]);
  });

  test.each([
    ["empty", "", undefined],
    ["with an unknown column", "name,colour\nA,red\n", "colour"],
    ["with a column twice", "name,name\nA,B\n", "name"],
  ])("%s is refused with the columns there are", async (_what, file, column) => {
    const { status, body } = await shopWith(file);
    expect(status).toBe(422);
    expect(body.report.faults).toHaveLength(1);
    expect(body.report.faults[0]).toMatchObject({ line: 1, ...(column !== undefined && { column }) });
    expect(body.report.faults[0].accepted).toMatch(column === "name" ? /once/ : /name, kind, diameterMm/);
  });

  test("with the empty rows and cells that spreadsheets leave behind is taken", async () => {
    const rows = straights(["First", "Second"]).replaceAll("\r\n", `${",".repeat(250)}\r\n`);
    const { body } = await shopWith(rows + `${",".repeat(60)}\r\n`.repeat(3000));
    expect(body).toMatchObject({ rows: 2, created: 2, isComplete: true });
  });

  test("of more than 32 MiB is a 413, and nothing of it is taken", async () => {
    const { shop, status, body } = await shopWith(Buffer.alloc(32 * 1024 * 1024 + 1, "\n"));
    expect(status).toBe(413);
    expect(body.code).toBe("body-too-large");
    expect(await bitsOf(shop)).toEqual([]);
  });

  test("of another type is a 415 that says which are taken, and no other route takes files", async () => {
    const shop = await openShop();
    const answer = await sendFile(shop, "{}", { type: "application/json" });
    expect(answer.status).toBe(415);
    expect(answer.headers["accept"]).toBe("text/csv, application/x-ndjson");
    const elsewhere = await shop.ask("POST", "/v1/bits", { body: "a,b", headers: { "content-type": CSV } });
    expect(elsewhere.status).toBe(415);
    expect(elsewhere.headers["accept"]).toBe("application/json");
  });
});
