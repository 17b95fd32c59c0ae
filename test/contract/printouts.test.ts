import { describe, expect, test } from "vitest";
import { bodyOf, OPERATIONS, urlOf } from "./bodies.ts";
import { addBit, addSomebody, made } from "./crib.ts";
import { AT, furnishedShop } from "./furnished-shop.ts";
import { printed, readHtml } from "./printed.ts";
import { readPdf } from "./read-pdf.ts";
import { PANEL_BIT, TABLE_ROUTER } from "./shop.ts";

const here = furnishedShop();

const printing = OPERATIONS.filter(({ id }) => /Printout$|^print/.test(id));

/** Papers in millimetres, by ISO 216 and, of cards and inches, by what they are sold as: `common practice`. */
const PAPERS = {
  a5: [148, 210],
  a4: [210, 297],
  a3: [297, 420],
  letter: [215.9, 279.4],
  "half-letter": [139.7, 215.9],
  "index-card": [127, 76],
} as const;

describe("every printout", () => {
  test("is of something that is kept, or of a plan that is asked for", () => {
    expect(printing.map(({ id }) => id).sort()).toEqual([
      "getApprovalPrintout",
      "getJobPrintout",
      "getPlanPrintout",
      "getRouterPrintout",
      "printPlan",
    ]);
  });

  test.each(printing.map((each) => [each.id, each] as const))(
    "%s comes as a tagged PDF in reading order, as HTML that does nothing, and as text",
    async (_id, operation) => {
      const { method } = operation;
      const url = urlOf(operation, here.furnished.ids);
      const body = operation.takesJson ? bodyOf(operation, here.furnished.ids) : undefined;
      const asking = { method: method === "POST" ? method : "GET", ...(body && { body }) } as const;
      const pdf = await printed(here.shop, `${url}?format=pdf`, asking);
      expect([pdf.status, pdf.type], pdf.bytes.toString()).toEqual([200, "application/pdf"]);
      const read = await readPdf(pdf.bytes);
      expect([read.isTagged, read.language]).toEqual([true, "en"]);
      const roles = read.pages.flatMap(({ elements }) => elements.map(({ role }) => role));
      expect(roles.slice(0, 2)).toEqual(["Document", "H1"]);
      for (const { elements } of read.pages)
        for (const { role, alt } of elements) if (role === "Figure") expect(alt).not.toBe("");
      // The title stands first, and the advice is on every sheet.
      expect(read.text.startsWith(read.title)).toBe(true);
      expect(read.text).toContain("not a certificate");

      const html = await printed(here.shop, `${url}?format=html`, asking);
      expect([html.status, html.type]).toEqual([200, "text/html; charset=utf-8"]);
      expect(html.headers["content-security-policy"]).toContain("default-src 'none'");
      expect(html.bytes.toString()).not.toMatch(/<script|javascript:|\son\w+=|<img|<link|url\(/i);
      expect(readHtml(html.bytes.toString())).toContain("not a certificate");

      const text = await printed(here.shop, `${url}?format=text`, asking);
      expect([text.status, text.type]).toEqual([200, "text/plain; charset=utf-8"]);
      expect(text.bytes.toString()).toContain("not a certificate");
    },
  );

  test.each(printing.map((each) => [each.id, each] as const))(
    "%s lies on the paper that was asked for, and no text leaves it",
    async (_id, operation) => {
      const url = urlOf(operation, here.furnished.ids);
      const body = operation.takesJson ? bodyOf(operation, here.furnished.ids) : undefined;
      const method = operation.method === "POST" ? "POST" : "GET";
      for (const [paper, size] of Object.entries(PAPERS)) {
        const { bytes } = await printed(here.shop, `${url}?paper=${paper}&units=imperial`, {
          method,
          ...(body && { body }),
        });
        const { pages } = await readPdf(bytes);
        for (const { widthMm, heightMm, texts } of pages) {
          const sides = [widthMm, heightMm].sort((one, other) => one - other);
          const [least, most] = [...size].sort((one, other) => one - other);
          expect(sides[0]).toBeCloseTo(least ?? 0, 0);
          expect(sides[1]).toBeCloseTo(most ?? 0, 0);
          for (const { text, leftMm, rightMm, baselineMm } of texts) {
            expect(leftMm, text).toBeGreaterThanOrEqual(0);
            expect(rightMm, text).toBeLessThanOrEqual(widthMm);
            expect(baselineMm, text).toBeLessThanOrEqual(heightMm);
          }
        }
      }
    },
  );

  test("is the same bytes when it is asked again", async () => {
    const url = `/v1/plans/${here.furnished.ids["planId"]}/printout`;
    const first = await printed(here.shop, url);
    here.now = new Date(AT.getTime() + 86_400_000);
    const again = await printed(here.shop, url);
    here.now = AT;
    expect(again.bytes.equals(first.bytes)).toBe(true);
  });

  test("on a paper or in a format that there is not is refused with those there are", async () => {
    const url = `/v1/plans/${here.furnished.ids["planId"]}/printout`;
    for (const [query, pointer, accepted] of [
      ["paper=a9", "/paper", "index-card"],
      ["format=png", "/format", "pdf"],
    ]) {
      const { status, body } = await here.shop.ask("GET", `${url}?${query}`);
      expect([status, body.errors[0].pointer]).toEqual([422, pointer]);
      expect(body.errors[0].accepted).toContain(accepted);
    }
  });

  test("is for members, and what everybody may see for students; another's is not there", async () => {
    const { key } = await addSomebody(here.shop, "member");
    const student = await addSomebody(here.shop, "student");
    const { planId, routerId, approvalId, jobId } = here.furnished.ids;
    for (const path of [`plans/${planId}`, `routers/${routerId}`]) {
      expect((await printed(here.shop, `/v1/${path}/printout`, { key })).status).toBe(200);
      expect((await printed(here.shop, `/v1/${path}/printout`, { key: student.key })).status).toBe(403);
    }
    for (const path of [`approvals/${approvalId}`, `jobs/${jobId}`]) {
      const other = await here.shop.ask("GET", `/v1/${path}/printout`, { key: student.key });
      expect([other.status, other.body.code]).toEqual([404, "not-found"]);
    }
  });
});

describe("an approved setting on paper", () => {
  test("says for whom, until when and how to check it, and is refused when it is no longer in force", async () => {
    const url = `/v1/approvals/${here.furnished.ids["approvalId"]}/printout`;
    const { bytes } = await printed(here.shop, url);
    const read = await readPdf(bytes);
    for (const said of [
      "for First year",
      "1 Apr 2026",
      here.furnished.ids["approvalId"] ?? "",
      "scan the code",
    ])
      expect(read.text).toContain(said);
    const codes = read.pages.flatMap(({ elements }) => elements.filter(({ role }) => role === "Figure"));
    expect(codes[0]?.alt).toContain(`/settings/${here.furnished.ids["approvalId"]}`);
    here.now = new Date("2030-01-01T00:00:00Z");
    const late = await here.shop.ask("GET", url);
    here.now = AT;
    expect([late.status, late.body.code]).toEqual([409, "invalid-state"]);
  });
});

describe("the wall chart of a router", () => {
  test("never shows a mark at which a bit shook, and says where a bit must not run", async () => {
    const router = await made(here.shop, "/v1/routers", TABLE_ROUTER);
    const fast = await addBit(here.shop, { ...PANEL_BIT, name: "Shook at two", markedMaxRpm: undefined });
    const slow = await addBit(here.shop, { ...PANEL_BIT, name: "Slow one", markedMaxRpm: 5000 });
    const chartOf = async () =>
      (
        await printed(here.shop, `/v1/routers/${router.id}/printout?format=text&ids=${fast.id},${slow.id}`)
      ).bytes.toString();
    const before = await chartOf();
    const mark = Number(/│ (\S+) +No\. \d+, Shook at two/.exec(before)?.[1]);
    await made(here.shop, "/v1/speed-trials", {
      bitId: fast.id,
      routerId: router.id,
      mark,
      outcome: "shook",
    });
    const after = await chartOf();
    expect(after).toMatch(/do not run +No\. \d+, Slow one/);
    const left = /│ (.+?) +No\. \d+, Shook at two/.exec(after)?.[1];
    expect(left === "do not run" || Number(left) < mark, left).toBe(true);
    const pdf = await readPdf(
      (await printed(here.shop, `/v1/routers/${router.id}/printout?ids=${slow.id}`)).bytes,
    );
    expect(pdf.text).toMatch(/Slow one[\s\S]*do not run/);
    expect(pdf.text).toContain("As of 2 Mar 2026");
    const roles = pdf.pages[0]?.elements.map(({ role }) => role) ?? [];
    expect(roles).toEqual(expect.arrayContaining(["Table", "TR", "TH", "TD"]));
  });
});

describe("a job's day on paper", () => {
  test("has each set-up once, what to fetch and the cautions, and is refused once a bit has changed", async () => {
    const jobId = here.furnished.ids["jobId"];
    const { body: job } = await here.shop.ask("GET", `/v1/jobs/${jobId}`);
    const read = await readPdf((await printed(here.shop, `/v1/jobs/${jobId}/printout`)).bytes);
    expect(read.text).toContain(job.name);
    job.work.setups.forEach((_: object, index: number) => {
      expect(read.text).toContain(`${index + 1}. `);
    });
    for (const { name } of job.work.bits) expect(read.text).toContain(name);
    expect(read.text).toContain("Wear eye and ear protection");
    const { bitId } = job.work.bits[0];
    await made(here.shop, `/v1/bits/${bitId}/hold`, { reason: "A chipped tooth." });
    const { status, body } = await here.shop.ask("GET", `/v1/jobs/${jobId}/printout`);
    expect([status, body.code]).toEqual([409, "result-changed"]);
    expect(body.detail).toContain("A chipped tooth.");
  });
});
