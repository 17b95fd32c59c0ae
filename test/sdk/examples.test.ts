import { appendFileSync, existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { made } from "../contract/crib.ts";
import { type Furnished, furnish } from "../contract/furnish.ts";
import { openShop, type Shop, TABLE_ROUTER } from "../contract/shop.ts";
import { CLIENT } from "./packed.ts";
import { exampleNamed, folderWithClient, start } from "./programs.ts";

const DAY_MS = 24 * 60 * 60 * 1000;
/** Nobody listens there: port 9 is the discard service's (RFC 863), which no machine here runs. */
const AWAY = "http://127.0.0.1:9";

const { folder, remove } = folderWithClient();
afterAll(remove);

let shop: Shop;
let furnished: Furnished;
let baseUrl: string;
// The shop was furnished three days ago, so that what was lent and looked at then is due.
let clock = () => new Date(Date.now() - 3 * DAY_MS);

beforeAll(async () => {
  shop = await openShop({}, () => clock(), afterAll);
  furnished = await furnish((path, body, key) => made(shop, path, body, key));
  baseUrl = await shop.app.listen({ host: "127.0.0.1", port: 0 });
});

const run = (name: string, given: readonly string[], url = baseUrl) =>
  start(
    { folder, code: exampleNamed(name), given },
    { RIMWISE_URL: url, RIMWISE_KEY: furnished.keys.manager },
  );

test("each example is run here", () => {
  const names = readdirSync(join(CLIENT, "examples")).filter((name) => name.endsWith(".ts"));
  expect(names).toEqual(["cut-list.ts", "kiosk.ts", "nightly.ts"]);
});

describe("a cut list of 100 parts", () => {
  test("is planned in one request and printed by set-up", async () => {
    const straight = {
      ...{ name: "Straight, 12.7 mm", shankDiameterMm: 12.7, wings: 2, massG: 60 },
      form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 },
    };
    const { id: bitId } = await made(shop, "/v1/bits", straight);
    const { id: routerId } = await made(shop, "/v1/routers", { ...TABLE_ROUTER, name: "Groove table" });
    const groove = (depthMm: number) => ({
      kind: "groove",
      depthMm,
      edges: [{ lengthMm: 600, grain: "long" }],
    });
    const part = (index: number) => ({
      name: `Stile ${index}`,
      ...{ bitId, routerId, mounting: "table", woodId: "black-cherry" },
      // Two depths: two set-ups. The last is deeper than the bit cuts.
      cut: groove(index === 100 ? 60 : index % 2 === 0 ? 6 : 9),
    });
    const file = join(folder, "cut-list.json");
    writeFileSync(file, JSON.stringify(Array.from({ length: 100 }, (_, index) => part(index + 1))));
    let asked = 0;
    shop.app.server.on("request", ({ url }) => {
      if (url?.startsWith("/v1/plans")) asked += 1;
    });
    const { code, out, err } = await run("cut-list", [file]).ended;
    expect(err).toBe("");
    expect(asked).toBe(1);
    const titles = [...out.matchAll(/^Set-up \d+: (.*)$/gm)].map(([, title]) => title);
    expect(titles).toHaveLength(2);
    for (const title of titles)
      expect(title).toMatch(/^Straight, 12\.7 mm in Groove table \(table\) at mark /);
    expect([...out.matchAll(/^ {2}(\d+) parts: /gm)].map(([, count]) => count).sort()).toEqual(["49", "50"]);
    expect(out).toMatch(/^Do not run: Stile 100: \S/m);
    expect(code, "a part that must not be run is no success").toBe(1);
  });
});

describe("a kiosk", () => {
  const sheets = join(folder, "sheets.json");
  const ask = async (url: string, change: object = {}) => {
    const { body } = await shop.ask("GET", `/v1/approvals/${furnished.ids["approvalId"]}`);
    const use = {
      personId: furnished.ids["personId"],
      ...{ bitId: body.bitId, routerId: body.routerId, woodId: "black-cherry", mounting: body.mounting },
      mark: body.setting.mark,
    };
    const { code, out } = await run("kiosk", ["ask", sheets, JSON.stringify({ ...use, ...change })], url)
      .ended;
    return { code, out };
  };

  test("asks the service, and believes its yes and its no", async () => {
    expect(await ask(baseUrl)).toMatchObject({ code: 0, out: "Yes, says the service.\n" });
    const refused = await ask(baseUrl, { mark: 6 });
    expect(refused).toMatchObject({ code: 1, out: expect.stringMatching(/^No: \S/) });
  });

  test("decides by the sheets that it kept while the service is away, for the person and use they name", async () => {
    const draft = {
      ...{ name: "Panels for one", courseId: furnished.ids["courseId"], planId: furnished.ids["planId"] },
      ...{ supervision: "beside", personIds: [furnished.ids["personId"]] },
      validUntil: new Date(Date.now() + DAY_MS).toISOString(),
    };
    const { id } = await made(shop, "/v1/approvals", draft, furnished.keys.instructor);
    await made(shop, `/v1/approvals/${id}/issue`, {}, furnished.keys.instructor);
    clock = () => new Date();
    expect(await run("kiosk", ["keep", sheets]).ended).toMatchObject({ code: 0, out: "Kept 2 sheets.\n" });
    const allowed = await ask(AWAY);
    expect(allowed.out).toMatch(
      /^The service is away .*\nYes, by the sheet "Panels for one"\. Supervision: beside\.\n$/,
    );
    expect(allowed.code).toBe(0);
    for (const [change, reason] of [
      [{ personId: furnished.ids["studentId"] }, "other-person"],
      [{ bitId: "bit_2" }, "other-bit"],
      [{ mark: 6 }, "other-mark"],
    ] as const) {
      const { code, out } = await ask(AWAY, change);
      expect([code, out]).toEqual([1, expect.stringContaining(reason)]);
    }
  });

  test("says no when it has kept nothing", async () => {
    const { code } = await run("kiosk", ["ask", join(folder, "none.json"), "{}"], AWAY).ended;
    expect(code).toBe(1);
  });
});

describe("a nightly job", () => {
  test("writes what is due, follows events until it is stopped, and goes on where it was", async () => {
    const bit = {
      name: "Spare straight",
      form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 },
      shankDiameterMm: 12.7,
      wings: 2,
    };
    clock = () => new Date(Date.now() - 3 * DAY_MS);
    const { id } = await made(shop, "/v1/bits", { ...bit, inspectionIntervalDays: 1 });
    const dueAt = new Date(Date.now() - DAY_MS).toISOString();
    const loan = await made(shop, "/v1/loans", { bitId: id, personId: furnished.ids["personId"], dueAt });
    clock = () => new Date();
    const file = join(folder, "events.ndjson");
    const written = (): number[] =>
      (existsSync(file) ? readFileSync(file, "utf8") : "")
        .split("\n")
        .slice(0, -1)
        .map((line) => JSON.parse(line).sequence);
    const last = async () => (await shop.ask("GET", "/v1/events?limit=200")).body.data.at(-1).sequence;

    const first = run("nightly", [folder]);
    await expect.poll(async () => written().at(-1) === (await last()), { timeout: 20_000 }).toBe(true);
    first.child.kill("SIGTERM");
    expect(await first.ended).toMatchObject({
      code: 0,
      out: "1 inspections due, 2 loans overdue.\n",
      err: "",
    });
    const due = JSON.parse(readFileSync(join(folder, "due.json"), "utf8"));
    expect(due.inspections).toMatchObject([{ id, name: "Spare straight" }]);
    // The shop's own is overdue as well: it was due at the end of its day.
    const overdue = [furnished.ids["loanId"], loan.id].sort();
    expect(due.overdueLoans.map((each: { id: string }) => each.id).sort()).toEqual(overdue);

    await made(shop, "/v1/bits", { ...bit, name: "Another" });
    // A power cut left half a line.
    appendFileSync(file, '{"sequence":9');
    const second = run("nightly", [folder]);
    await expect.poll(async () => written().at(-1) === (await last()), { timeout: 20_000 }).toBe(true);
    second.child.kill("SIGTERM");
    expect((await second.ended).code).toBe(0);
    expect(written()).toEqual(Array.from({ length: await last() }, (_, index) => index + 1));
  });
});
