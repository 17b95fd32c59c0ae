import { describe, expect, test } from "vitest";
import { addBit, made } from "./crib.ts";
import { kitchenBits, kitchenJob } from "./kitchen.ts";
import { createJob, kitchenShop } from "./kitchen-shop.ts";

const kitchen = kitchenShop();

const solve = (body: object) => kitchen.shop.ask("POST", "/v1/joints/solve", { body });
const ofKitchen = () => ({
  joint: "cope-and-stick",
  first: { id: kitchen.ids.stickId },
  second: { id: kitchen.ids.copeId },
  thicknessMm: 19,
});
const codesOf = (body: { findings: { code: string }[] }) => body.findings.map(({ code }) => code);

describe("a joint", () => {
  test("of a fresh pair closes with flush faces, and each half is a cut that plans as it is", async () => {
    const { body } = await solve(ofKitchen());
    expect(body).toMatchObject({ facesOffMm: 0, isCorrected: false, findings: [] });
    expect(body.gap.mm).toBeLessThanOrEqual(0.01);
    expect(body.overlap.mm).toBeLessThanOrEqual(0.01);
    for (const [half, bitId] of [
      [body.first, kitchen.ids.stickId],
      [body.second, kitchen.ids.copeId],
    ]) {
      expect(half.measures.length).toBeGreaterThan(0);
      const plan = await made(kitchen.shop, "/v1/plans/preview", {
        bit: { id: bitId },
        router: { id: kitchen.ids.routerId },
        ...{ mounting: "table", woodId: "black-cherry" },
        cut: { ...half.cut, edges: [{ lengthMm: 600, grain: "long" }] },
      });
      expect(plan.verdict).not.toBe("do-not-run");
      expect(plan.passes.at(-1).heightMm).toBeCloseTo(half.cut.heightMm, 1);
    }
  });

  test("of a pair that was sharpened apart says so, with the gap", async () => {
    // Half a millimetre off the stick's diameter, with its bearing as it was: its groove is a quarter of a millimetre shallower.
    const { form } = kitchenBits(kitchen.ids.radiusMm).stick;
    const shallower = {
      ...form,
      diameterMm: form.diameterMm - 0.5,
      grooveDepthMm: form.grooveDepthMm - 0.25,
    };
    await made(kitchen.shop, `/v1/bits/${kitchen.ids.stickId}/sharpenings`, { form: shallower });
    const { body } = await solve(ofKitchen());
    expect(codesOf(body)).toContain("sharpened-apart");
    const { work } = await createJob(kitchen);
    expect(codesOf(work)).toContain("pair-sharpened-apart");
  });

  test("is put right by what its test pieces showed", async () => {
    const before = (await solve(ofKitchen())).body;
    const { body } = await solve({ ...ofKitchen(), measured: { facesOffMm: 0.4 } });
    expect(body.isCorrected).toBe(true);
    // The cope's face stood 0.4 mm above the stick's: it is cut with its face on the table, so the bit comes up by as much (geometry).
    expect(body.second.cut.heightMm - before.second.cut.heightMm).toBeCloseTo(0.4, 2);
  });

  test("names what cannot be: a bit of another form, nothing measured, stock too thin", async () => {
    const pointers = async (body: object) =>
      (await solve(body)).body.errors.map(({ pointer }: { pointer: string }) => pointer);
    expect(await pointers({ ...ofKitchen(), first: { id: kitchen.ids.panelId } })).toEqual([
      "/first/form/kind",
    ]);
    expect(await pointers({ ...ofKitchen(), second: { id: "bit_0" } })).toEqual(["/second/id"]);
    expect(await pointers({ ...ofKitchen(), measured: {} })).toEqual(["/measured"]);
    expect(await pointers({ ...ofKitchen(), thicknessMm: 10 })).toEqual(["/thicknessMm"]);
  });

  test("of a job takes the two bits that fit each other best, the same for either half", async () => {
    const { radiusMm } = kitchen.ids;
    const { stick } = kitchenBits(radiusMm);
    // A second stick with a thicker groove than the cope's tongue: it does not fit.
    const other = { ...stick, form: { ...stick.form, grooveWidthMm: 7.5 } };
    await addBit(kitchen.shop, other);
    const job = kitchenJob(kitchen.ids);
    const wanted = (half: string) => ({ by: "joint", joint: "cope-and-stick", half, sizes: { radiusMm } });
    const [rail] = job.parts;
    const cuts = [
      { along: "both-ends", wanted: wanted("cope") },
      { along: "one-side", wanted: wanted("stick") },
    ];
    const { work } = await createJob(kitchen, { parts: [{ ...rail, cuts }] });
    expect(work.cuts.map(({ bitId }: { bitId: string }) => bitId)).toEqual([
      kitchen.ids.copeId,
      kitchen.ids.stickId,
    ]);
    const { body } = await solve(ofKitchen());
    const last = (bitId: string) =>
      work.setups.filter((setup: { bitId: string }) => setup.bitId === bitId).at(-1);
    expect(last(kitchen.ids.copeId).heightMm).toBeCloseTo(body.second.cut.heightMm, 1);
    expect(last(kitchen.ids.stickId).heightMm).toBeCloseTo(body.first.cut.heightMm, 1);
    const none = { along: "both-ends", wanted: { ...wanted("cope"), half: "tail" } };
    const answer = await kitchen.shop.ask("POST", "/v1/jobs/preview", {
      body: { ...job, parts: [{ ...rail, cuts: [none] }] },
    });
    expect(answer.body.errors).toMatchObject([{ pointer: "/parts/0/cuts/0/wanted/half" }]);
  });
});

describe("a template", () => {
  test("is offset by half of what the bushing is wider than the bit, and its corners are no tighter than half the bit (geometry)", async () => {
    const asked = {
      bitDiameterMm: 12.7,
      runsBy: "bushing",
      runsDiameterMm: 19,
      line: "inside",
      insideRadiusMm: 5,
    };
    const { body } = await kitchen.shop.ask("POST", "/v1/joints/template", { body: asked });
    expect(body).toMatchObject({ offsetMm: 3.15, leastInsideRadiusMm: 6.35, leastTemplateRadiusMm: 9.5 });
    expect(codesOf(body)).toEqual(["inside-corner-too-tight"]);
  });

  test("gives the bushing of the other part of an inlay: wider by two bits (geometry)", async () => {
    const asked = { bitDiameterMm: 6.35, runsBy: "bushing", runsDiameterMm: 12, line: "plug" };
    const { body } = await kitchen.shop.ask("POST", "/v1/joints/template", { body: asked });
    expect(body).toMatchObject({ otherBushingDiameterMm: 24.7, findings: [] });
  });
});
