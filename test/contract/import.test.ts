import { readdirSync } from "node:fs";
import { tmpdir } from "node:os";
import { afterAll, describe, expect, test } from "vitest";
import { CSV, manyStraights, NDJSON, sendFile, straights } from "./import-files.ts";
import { openShop, PANEL_BIT, type Shop } from "./shop.ts";

const NAMES = ["First", "Second", "Third"];

const bitsOf = async ({ ask }: Shop) => (await ask("GET", "/v1/bits?limit=200")).body.data;
const eventsOf = async ({ ask }: Shop) => {
  const { body } = await ask("GET", "/v1/events?limit=200");
  return body.data.map(({ type }: { type: string }) => type);
};

describe("an import, all or nothing", () => {
  test("puts every row on the rack, each with its event, and tells what came of it", async () => {
    const shop = await openShop();
    const before = await eventsOf(shop);
    const { status, body } = await sendFile(shop, straights(NAMES));
    expect(status).toBe(200);
    expect(body).toMatchObject({ rows: 3, created: 3, changed: 0, refused: 0, faults: [], isComplete: true });
    expect((await bitsOf(shop)).map(({ name }: { name: string }) => name)).toEqual(NAMES);
    const events = (await eventsOf(shop)).slice(before.length);
    expect(events).toEqual(["import.created", "bit.created", "bit.created", "bit.created"]);
  });

  test("changes nothing where one row cannot be taken, and names each fault by line and column", async () => {
    const shop = await openShop();
    const before = await eventsOf(shop);
    const file = `${straights(NAMES)}Fourth,straight,"12,5",30,12.7,2\r\nFifth,straight,12,30,12.7\r\nSixth,straight,12,30,99,2\r\n`;
    const { status, body } = await sendFile(shop, file);
    expect(status).toBe(422);
    expect(body).toMatchObject({ code: "import-not-valid" });
    expect(body.report).toMatchObject({
      rows: 6,
      created: 0,
      refused: 3,
      faultsLeftOut: 0,
      isComplete: true,
    });
    expect(body.report.faults).toEqual([
      { line: 5, column: "diameterMm", message: expect.any(String), accepted: expect.stringContaining("mm") },
      { line: 6, message: "This row has 5 cells.", accepted: expect.stringMatching(/^6 cells/) },
      { line: 7, column: "shankDiameterMm", message: expect.any(String), accepted: "a number from 3 to 20" },
    ]);
    expect(await bitsOf(shop)).toEqual([]);
    expect(await eventsOf(shop)).toEqual(before);
  });

  test("tells at most 200 faults and how many more there are", async () => {
    const shop = await openShop();
    const rows = Array.from({ length: 250 }, () => "x,straight,12,30,99,2").join("\n");
    const { body } = await sendFile(shop, `${straights([])}${rows}\n`);
    expect(body.report).toMatchObject({ refused: 250, faultsLeftOut: 50 });
    expect(body.report.faults).toHaveLength(200);
  });

  test("refuses more than 10,000 rows, and says so", async () => {
    const shop = await openShop();
    // Bad rows, because good ones are decided in full: what is looked at here is the bound.
    const { status, body } = await sendFile(shop, `${straights([])}${"x,y,1,1,1,1\n".repeat(10_001)}`);
    expect(status).toBe(422);
    expect(body.report.isComplete).toBe(false);
    expect(body.report.faults.at(-1)).toMatchObject({
      line: 10_002,
      accepted: expect.stringContaining("10000 rows"),
    });
  });

  test("leaves no file behind, whatever came of it", async () => {
    const shop = await openShop();
    const ours = () => readdirSync(tmpdir()).filter((name) => /^rimwise-[0-9a-f]{8}-/.test(name));
    const before = ours();
    await sendFile(shop, straights(NAMES));
    await sendFile(shop, `${straights(NAMES)}"never closed`);
    expect(ours()).toEqual(before);
  });
});

describe("a dry run", () => {
  test.each(["all-or-nothing", "row-by-row"])(
    "of %s tells what would be and changes nothing",
    async (mode) => {
      const shop = await openShop();
      const before = await eventsOf(shop);
      const file = `${straights(NAMES)}Fourth,straight,12,30,99,2\r\n`;
      const { status, body } = await sendFile(shop, file, { query: `?dryRun=true&mode=${mode}` });
      expect(status).toBe(200);
      expect(body).toMatchObject({ mode, dryRun: true, rows: 4, created: 3, refused: 1 });
      expect(body).not.toHaveProperty("importId");
      expect(body.faults).toMatchObject([{ line: 5, column: "shankDiameterMm" }]);
      expect(await eventsOf(shop)).toEqual(before);
      expect((await shop.ask("GET", "/v1/imports")).body.data).toEqual([]);
    },
  );
});

describe("an import, row by row", () => {
  test("takes the good rows and names the bad ones", async () => {
    const shop = await openShop();
    const file = `${straights(NAMES)}Fourth,straight,12,30,99,2\r\nFifth,straight,14,30,12.7,2\r\n`;
    const { status, body } = await sendFile(shop, file, { query: "?mode=row-by-row" });
    expect(status).toBe(200);
    expect(body).toMatchObject({ rows: 5, created: 4, refused: 1 });
    expect(body.faults).toMatchObject([{ line: 5, column: "shankDiameterMm" }]);
    expect((await bitsOf(shop)).map(({ name }: { name: string }) => name)).toEqual([...NAMES, "Fifth"]);
    const kept = await shop.ask("GET", `/v1/imports/${body.importId}`);
    expect(kept.body).toMatchObject({
      state: "done",
      rows: 5,
      created: 4,
      refused: 1,
      newIds: 4,
      version: 2,
    });
  });
});

describe("two imports at once", () => {
  test("are not: the second is told to come back, and nothing of it is taken", async () => {
    const shop = await openShop();
    const answers = await Promise.all([
      sendFile(shop, manyStraights(200)),
      sendFile(shop, straights(NAMES), { query: "?mode=row-by-row" }),
      sendFile(shop, manyStraights(201)),
    ]);
    const taken = answers.filter(({ status }) => status === 200);
    const refused = answers.filter(({ status }) => status === 409);
    expect([taken.length, refused.length]).toEqual([1, 2]);
    for (const { body, headers } of refused) {
      expect(body.code).toBe("import-running");
      expect(headers["retry-after"]).toBe("5");
    }
    const [imported] = (await shop.ask("GET", "/v1/imports")).body.data;
    expect(imported.id).toBe(taken[0]?.body.importId);
    expect((await sendFile(shop, straights(NAMES), { query: "?again=true" })).status).toBe(200);
  });
});

describe("an import's events", () => {
  test("say who, in which request and why", async () => {
    const shop = await openShop();
    const headers = { "content-type": CSV, "Change-Reason": "The new rack", "X-Request-Id": "rack-1" };
    await shop.ask("POST", "/v1/bits/import", { body: straights(NAMES), headers });
    const { body } = await shop.ask("GET", "/v1/events?type=bit.created");
    expect(body.data).toHaveLength(3);
    for (const event of body.data) {
      expect(event).toMatchObject({ why: "The new rack", requestId: "rack-1", subjectVersion: 1 });
    }
  });
});

describe("the same file again", () => {
  test("is refused where it would make its bits once more, and says when and by which import", async () => {
    const shop = await openShop();
    const first = await sendFile(shop, straights(NAMES));
    const kept = (await shop.ask("GET", `/v1/imports/${first.body.importId}`)).body;
    for (const mode of ["all-or-nothing", "row-by-row"]) {
      const { status, body } = await sendFile(shop, straights(NAMES), { query: `?mode=${mode}` });
      expect(status).toBe(409);
      expect(body.code).toBe("imported-before");
      expect(body.detail).toContain(first.body.importId);
      expect(body.detail).toContain(kept.createdAt);
    }
    expect(await bitsOf(shop)).toHaveLength(3);
  });

  test("is taken where the caller says so", async () => {
    const shop = await openShop();
    await sendFile(shop, straights(NAMES));
    const again = await sendFile(shop, straights(NAMES), { query: "?again=true" });
    expect(again.body).toMatchObject({ created: 3 });
    expect(await bitsOf(shop)).toHaveLength(6);
  });

  test("is taken where nothing of it was taken before", async () => {
    const shop = await openShop();
    const file = straights(NAMES, { homePlaceId: "place_none" });
    expect((await sendFile(shop, file, { query: "?mode=row-by-row" })).body.refused).toBe(3);
    expect((await sendFile(shop, file, { query: "?mode=row-by-row" })).status).toBe(200);
  });
});

describe("a row with an id", () => {
  const ID = `bit_${"0123456789abcdef".repeat(2)}`;

  test("makes a bit under that id where there is none", async () => {
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
    await sendFile(shop, `id,kind,diameterMm,cuttingLengthMm\n${bit.id},straight,20,30\n`);
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
    ["massG", "0.34 kg", { massG: 340 }],
    ["inspectionIntervalM", "0.2 km", undefined],
    ["inspectionIntervalM", "200 m", { inspectionIntervalM: 200 }],
    ["isHandFeedMarked", "Yes", { isHandFeedMarked: true }],
    ["isHandFeedMarked", "perhaps", undefined],
    ["diameterMm", '"12,7"', undefined],
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
      expect(body.report.faults).toEqual([
        { line: 2, column, message: expect.any(String), accepted: expect.stringMatching(/\w/) },
      ]);
    } else {
      expect(status).toBe(200);
      expect((await bitsOf(shop)).at(-1)).toMatchObject(wanted);
    }
  });
});

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

describe("who may import and export", () => {
  test("staff may import; a member and a key narrowed to reading may export only", async () => {
    const shop = await openShop();
    const keyOf = async (body: object) => (await shop.ask("POST", "/v1/keys", { body })).body.key as string;
    const member = await keyOf({ name: "Bench 3", role: "member" });
    const narrowed = await keyOf({ name: "Label printer", role: "manager", scopes: ["bits:read"] });
    const instructor = await keyOf({ name: "Instructor", role: "instructor" });
    for (const key of [member, narrowed]) {
      const { status, body } = await sendFile(shop, straights(NAMES), { key });
      expect(status).toBe(403);
      expect(body.code).toBe("scope-missing");
      expect((await shop.ask("GET", "/v1/bits/export", { key })).status).toBe(200);
    }
    expect(await bitsOf(shop)).toEqual([]);
    expect((await sendFile(shop, straights(NAMES), { key: instructor })).status).toBe(200);
  });
});
