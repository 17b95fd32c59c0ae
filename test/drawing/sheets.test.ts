import { ADVICE, cardText, makePlan, type PlanInput, planCard, showIn } from "@rimwise/domain";
import {
  approvedSheet,
  type DrawnUnits,
  daySheet,
  hasEverySign,
  PAPERS,
  type PaperName,
  placed,
  planSheet,
  type Scene,
  type Sheet,
  svg,
  textsOf,
  wallChartSheet,
} from "@rimwise/drawing";
import { describe, expect, it } from "vitest";
import { PLAN_INPUTS } from "../bench/plan-inputs.ts";
import { randomPlans } from "../properties/random-plans.ts";
import { HOSTILE } from "./hostile.ts";
import { crowded, expectKept } from "./layout.ts";
import { CODE, DAY_SETUPS } from "./sheet-examples.ts";

const PAPER_NAMES = Object.keys(PAPERS) as PaperName[];
const INPUT = inputOf("large panel, table");
const REFUSED: PlanInput = { ...INPUT, mounting: "handheld" };
const UNITS: readonly DrawnUnits[] = ["metric", "imperial"];

const plan = (name: string, paper: PaperName, units: DrawnUnits = "metric", input = INPUT) =>
  planSheet({
    input,
    plan: makePlan(input),
    name,
    bitName: name,
    routerName: name,
    notes: [name],
    madeFrom: name,
    units,
    paper,
  });

const approved = (name: string, paper: PaperName, units: DrawnUnits = "metric") =>
  approvedSheet({
    name,
    approvalId: "approval_01",
    issued: { course: name, by: name, untilDay: "2 Apr 2026", supervision: "somebody is in the room" },
    code: CODE,
    plans: [
      { input: INPUT, plan: makePlan(INPUT), bitName: name, routerName: name },
      { input: INPUT, plan: makePlan(INPUT), bitName: name, routerName: name },
    ],
    units,
    paper,
  });

const day = (name: string, paper: PaperName, units: DrawnUnits = "metric") =>
  daySheet({
    name,
    verdict: "run-with-care",
    findings: [name],
    cautions: [name],
    fetch: [{ name, where: name }],
    setups: DAY_SETUPS.map((each) => ({ ...each, bitName: name, station: name, cuts: name })),
    madeFrom: name,
    units,
    paper,
  });

const chart = (name: string, paper: PaperName, units: DrawnUnits = "metric") =>
  wallChartSheet({
    router: name,
    bits: Array.from({ length: 60 }, (_, index) => ({
      number: String(index + 1),
      name,
      diameterMm: 12.7,
      shankDiameterMm: 12.7,
      setting: index % 3 === 0 ? undefined : { mark: 2.5, rpm: 12_000 },
      clearance: "handheld-with-care",
      ceilingRpm: 16_000,
    })),
    isAll: false,
    asOfDay: "2 Mar 2026",
    units,
    paper,
  });

const KINDS = { plan, "approved setting": approved, day, "wall chart": chart };
const wordsOf = ({ pages }: Sheet) =>
  pages
    .flatMap((page) => textsOf(page))
    .map(({ text, whole }) => whole ?? text)
    .join(" ")
    .replaceAll(/\s+/g, " ");

describe.each(Object.entries(KINDS))("a %s on paper", (_kind, sheet) => {
  it.each(PAPER_NAMES)("keeps its texts apart and on the page on %s, in both systems of units", (paper) => {
    for (const units of UNITS) {
      const { pages } = sheet("Door panels in cherry", paper, units);
      const { widthMm, heightMm } = PAPERS[paper];
      for (const page of pages) {
        expectKept(page);
        expect([page.widthMm, page.heightMm].sort()).toEqual([widthMm, heightMm].sort());
      }
    }
  });

  it.each(Object.entries(HOSTILE))("does so with every name as %s, and loses none of it", (_what, name) => {
    for (const paper of ["a5", "index-card"] as const) {
      const made = sheet(name, paper);
      for (const page of made.pages) expectKept(page);
      const shown = wordsOf(made).replaceAll(" ", "");
      const given = name.replaceAll(/[\s\u202E]/g, "");
      expect(shown).toContain(given);
    }
  });
});

describe("a plan on paper", () => {
  it("says every step and every caution of the plan on every paper, a card too", () => {
    const words = planCard("x", makePlan(INPUT), showIn("metric")).sections;
    const said = ["mind", "first of all"].flatMap(
      (label) => words.find((each) => each.label === label)?.lines ?? [],
    );
    const steps = words.find(({ label }) => label === "work")?.lines ?? [];
    expect(said.length).toBeGreaterThan(5);
    for (const paper of PAPER_NAMES) {
      const shown = wordsOf(plan("Door panels", paper));
      for (const each of [...said, ...steps]) expect(shown).toContain(each);
    }
  });

  it("has its first cautions on the page that has the setting", () => {
    for (const paper of PAPER_NAMES) {
      const [first] = plan("Door panels", paper).pages;
      const shown = wordsOf({ title: "", pages: first === undefined ? [] : [first] });
      expect(shown).toContain("rpm");
      expect(shown).toMatch(/Cautions/);
      expect(shown).toContain("This bit is for a table only.");
    }
  });

  it("that must not be run says so and why, and has no setting at all", () => {
    for (const paper of PAPER_NAMES) {
      const shown = wordsOf(plan("Door panels", paper, "metric", REFUSED));
      expect(shown).toMatch(/Do not run/);
      expect(shown).toContain("This bit is not for a handheld router.");
      expect(shown).toContain(ADVICE);
      expect(shown).not.toMatch(/\d rpm|Dial mark|Set the|For pass/);
    }
    const text = cardText(planCard("Door panels", makePlan(REFUSED), showIn("metric")));
    expect(text).toContain("DO NOT RUN");
    expect(text).not.toMatch(/\d rpm/);
  });

  it("goes on to as many pages as it takes and numbers them", () => {
    const { pages } = plan("Door panels", "index-card");
    expect(pages.length).toBeGreaterThan(2);
    pages.forEach((page, index) => {
      const shown = wordsOf({ title: "", pages: [page] });
      expect(shown).toContain(`page ${index + 1} of ${pages.length}`);
      if (index > 0) expect(shown).toContain("Door panels");
    });
  });

  it("keeps its texts apart and on the page for 60 random plans", () => {
    for (const { input, plan: made } of randomPlans(11, 60)) {
      for (const paper of ["a5", "index-card"] as const)
        for (const page of planSheet({ input, plan: made, name: "A cut", units: "metric", paper }).pages)
          expect(crowded(page)).toEqual([]);
    }
  });
});

describe("a drawing on a page", () => {
  const line = {
    start: { xMm: 0, yMm: 0 },
    pieces: [{ to: { xMm: 10, yMm: 4 }, radiusMm: 8, isClockwise: true }],
    isClosed: false,
  };
  const scene: Scene = {
    widthMm: 40,
    heightMm: 20,
    title: "A bit",
    description: "To scale.",
    items: [
      { kind: "path", shows: { of: "rim" }, contours: [line], line: "thin", fill: "none" },
      { kind: "text", xMm: 4, yMm: 6, sizeMm: 3, anchor: "end", weight: "bold", text: "12 mm" },
    ],
  };

  it("is moved and scaled with everything in it, and said in words", () => {
    const { label, items } = placed(scene, { xMm: 100, yMm: 50, scale: 0.5 });
    expect(label).toBe("A bit. To scale.");
    expect(items).toEqual([
      {
        kind: "path",
        shows: { of: "rim" },
        contours: [
          {
            start: { xMm: 100, yMm: 50 },
            pieces: [{ to: { xMm: 105, yMm: 52 }, radiusMm: 4, isClockwise: true }],
            isClosed: false,
          },
        ],
        line: "thin",
        fill: "none",
      },
      { kind: "text", xMm: 102, yMm: 53, sizeMm: 1.5, anchor: "end", weight: "bold", text: "12 mm" },
    ]);
  });
});

it("the font is asked which signs it has", () => {
  expect(hasEverySign("Ø 88.9 mm ½ א", "normal")).toBe(true);
  expect(hasEverySign("木", "normal")).toBe(false);
});

it("a page as SVG has the paper's size", () => {
  const [page] = plan("Door panels", "a5").pages;
  expect(page && svg(page)).toContain('width="148mm" height="210mm"');
});

function inputOf(name: string): PlanInput {
  const input = PLAN_INPUTS[name];
  if (input === undefined) throw new Error(`the benchmarks have no ${name}`);
  return input;
}
