import { readdirSync } from "node:fs";
import { tmpdir } from "node:os";
import { describe, expect, test } from "vitest";
import { bitsOf, CSV, eventsOf, manyStraights, NAMES, sendFile, straights } from "./import-files.ts";
import { openShop } from "./shop.ts";

describe("an import, all or nothing", () => {
  test("puts every row on the rack, each with its event, and reports what came of it", async () => {
    const shop = await openShop();
    const before = await eventsOf(shop);
    const { status, body } = await sendFile(shop, straights(NAMES));
    expect(status).toBe(200);
    expect(body).toMatchObject({ rows: 3, created: 3, changed: 0, refused: 0, faults: [], isComplete: true });
    expect((await bitsOf(shop)).map(({ name }: { name: string }) => name)).toEqual(NAMES);
    const events = (await eventsOf(shop)).slice(before.length);
    expect(events).toEqual(["import.created", "bit.created", "bit.created", "bit.created"]);
  });

  test("changes nothing if one row cannot be taken, and names each fault by line and column", async () => {
    const shop = await openShop();
    const before = await eventsOf(shop);
    const file = `${straights(NAMES)}Fourth,straight,"1,250",30,12.7,2\r\nFifth,straight,12,30,12.7\r\nSixth,straight,12,30,99,2\r\n`;
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
      {
        ...{ line: 5, column: "diameterMm", given: "1,250" },
        ...{ message: "This may be 1250 or 1.250.", accepted: expect.stringContaining("1.250") },
      },
      { line: 6, message: "This row has 5 cells.", accepted: expect.stringMatching(/^6 cells/) },
      {
        ...{ line: 7, column: "shankDiameterMm", given: "99" },
        ...{ message: expect.any(String), accepted: "a number from 3 to 20" },
      },
    ]);
    expect(await bitsOf(shop)).toEqual([]);
    expect(await eventsOf(shop)).toEqual(before);
  });

  test("lists at most 200 faults and counts the others", async () => {
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
  test.each([
    ["all-or-nothing", 422],
    ["row-by-row", 200],
  ])(
    "of %s reports what would be, is answered as the import would be, and changes nothing",
    async (mode, wanted) => {
      const shop = await openShop();
      const before = await eventsOf(shop);
      const file = `${straights(NAMES)}Fourth,straight,12,30,99,2\r\n`;
      const { status, body } = await sendFile(shop, file, { query: `?isDryRun=true&mode=${mode}` });
      expect(status).toBe(wanted);
      const report = body.report ?? body;
      expect(report).toMatchObject({ mode, isDryRun: true, rows: 4, created: 3, refused: 1 });
      expect(report).not.toHaveProperty("importId");
      expect(report.faults).toMatchObject([{ line: 5, column: "shankDiameterMm" }]);
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
  test("are not: the second is asked to come back, and nothing of it is taken", async () => {
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
    expect((await sendFile(shop, straights(NAMES), { query: "?isRepeat=true" })).status).toBe(200);
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
  test("is refused if it would make its bits once more, and says when and by which import", async () => {
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

  test("is taken if the caller says so", async () => {
    const shop = await openShop();
    await sendFile(shop, straights(NAMES));
    const again = await sendFile(shop, straights(NAMES), { query: "?isRepeat=true" });
    expect(again.body).toMatchObject({ created: 3 });
    expect(await bitsOf(shop)).toHaveLength(6);
  });

  test("is taken if nothing of it was taken before", async () => {
    const shop = await openShop();
    const file = straights(NAMES, { homePlaceId: "place_none" });
    const again = () => sendFile(shop, file, { query: "?mode=row-by-row" });
    expect((await again()).body).toMatchObject({ code: "import-not-valid", report: { refused: 3 } });
    expect((await again()).body.code, "not imported-before").toBe("import-not-valid");
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
