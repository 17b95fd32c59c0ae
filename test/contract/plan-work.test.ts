import { describe, expect, test } from "vitest";
import { sharedShop } from "./shop.ts";

const STRAIGHT = {
  form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 },
  shankDiameterMm: 12.7,
  wings: 2,
};
const FLUSH = {
  form: { kind: "flush-trim", diameterMm: 12.7, cuttingLengthMm: 25.4, bearing: "shank", pilotHeightMm: 5 },
  shankDiameterMm: 6.35,
  wings: 2,
};
const GROOVE = { kind: "groove", depthMm: 6, edges: [{ lengthMm: 600, grain: "long" }] };
const REQUEST = {
  bit: STRAIGHT,
  router: { minRpm: 8000, maxRpm: 24_000, dial: { marks: { first: 1, last: 6 } }, inputPowerW: 1800 },
  mounting: "handheld",
  woodId: "black-cherry",
  cut: GROOVE,
};

const shop = sharedShop();

async function preview(cut: object, more: object = {}) {
  return shop.ask("POST", "/v1/plans/preview?units=metric", { body: { ...REQUEST, ...more, cut } });
}

const codesOf = (each: readonly { code: string }[]) => each.map(({ code }) => code);

describe("the work and the guide of a cut", () => {
  test("are taken, and the guide that was named is the plan's", async () => {
    const work = { lengthMm: 800, widthMm: 300, thicknessMm: 19, count: 4, faceDown: "best" };
    const { status, body } = await preview({ ...GROOVE, work, guide: "edge-guide" });
    expect(status).toBe(200);
    expect(body.guide).toMatchObject({ code: "edge-guide" });
    expect(codesOf(body.assumptions)).not.toContain("guide-assumed");
    expect(codesOf(body.assumptions)).not.toContain("work-not-described");
  });

  test("are assumed on the cautious side when left out, and said", async () => {
    const { body } = await preview(GROOVE);
    expect(body.guide).toMatchObject({ code: "straightedge" });
    expect(codesOf(body.assumptions)).toEqual(
      expect.arrayContaining(["guide-assumed", "work-not-described"]),
    );
  });

  test("stop the plan when the guide does not serve, and say which would", async () => {
    const { status, body } = await preview({ ...GROOVE, guide: "fence" });
    expect(status).toBe(200);
    expect(body).toMatchObject({ verdict: "do-not-run", guide: null, passes: [], steps: [] });
    expect(body.speed.rpm).toBeNull();
    expect(body.findings).toContainEqual({
      code: "guide-does-not-serve",
      severity: "refuse",
      text: "This cut cannot be guided by the fence. With the router held by hand this would: a straightedge, or an edge guide.",
    });
  });

  test("set a bit with a shank bearing through its template", async () => {
    const cut = { kind: "trim", overhangMm: 1, thicknessMm: 19, templateThicknessMm: 6, edges: GROOVE.edges };
    const { body } = await preview(cut, { bit: FLUSH, mounting: "table" });
    // 25.4 mm of edges, from 1 mm inside the 6 mm of template.
    expect(body.passes).toMatchObject([{ heightMm: 30.4 }]);
    const texts = body.steps.map(({ text }: { text: string }) => text).join(" ");
    expect(texts).toMatch(/Set the bit 30\.4 mm above the table/);
  });

  test.each<[string, object, string]>([
    ["a guide that there is not", { guide: "magnet" }, "/cut/guide"],
    ["a length that is no number", { work: { lengthMm: "long" } }, "/cut/work/lengthMm"],
    ["a field that work has not", { work: { colour: "red" } }, "/cut/work/colour"],
    ["no thickness at all", { work: { thicknessMm: 0 } }, "/cut/work/thicknessMm"],
    ["half a piece", { work: { count: 1.5 } }, "/cut/work/count"],
    ["a face that there is not", { work: { faceDown: "third" } }, "/cut/work/faceDown"],
    ["a grain that there is not", { edges: [{ lengthMm: 600, grain: "around" }] }, "/cut/edges/0/grain"],
    ["a groove through the work", { work: { thicknessMm: 5 } }, "/cut/depthMm"],
    ["an edge longer than the work", { work: { lengthMm: 500 } }, "/cut/edges/0/lengthMm"],
    ["a bushing without its size", { guide: "template-and-bushing" }, "/cut/bushingDiameterMm"],
    ["a bushing beside another guide", { guide: "fence", bushingDiameterMm: 16 }, "/cut/guide"],
  ])("name the field of %s", async (_, wrong, pointer) => {
    const answer = await preview({ ...GROOVE, ...wrong });
    expect(answer.status, answer.text).toBe(422);
    const [first] = answer.body.errors;
    expect(first.pointer).toBe(pointer);
    expect(first.accepted).toMatch(/\w/);
  });

  test("name the thickness that contradicts the cut's own", async () => {
    const cut = { kind: "edge", thicknessMm: 19, work: { thicknessMm: 18 }, edges: GROOVE.edges };
    const answer = await preview(cut);
    expect(answer.status).toBe(422);
    expect(answer.body.errors).toMatchObject([{ pointer: "/cut/work/thicknessMm" }]);
  });
});

describe("a bit that cuts at its end", () => {
  test("is kept as such, and is plunged when its groove is stopped", async () => {
    const kept = await shop.ask("POST", "/v1/bits", {
      body: { ...STRAIGHT, name: "Plunging straight, 12.7 mm", isEndCutting: true },
    });
    expect(kept.body.isEndCutting).toBe(true);
    const body = { ...REQUEST, bit: { id: kept.body.id }, cut: { ...GROOVE, isStopped: true } };
    const { body: plan } = await shop.ask("POST", "/v1/plans/preview", { body });
    const said = plan.precautions.find(({ code }: { code: string }) => code === "stopped-groove");
    expect(said.text).toMatch(/plunge at the start/);
    expect(codesOf(plan.assumptions)).not.toContain("end-cutting-unknown");
  });
});
