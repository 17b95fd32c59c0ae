import { describeTemplateFinding, showIn, type TemplateAsked, templateFit } from "@rimwise/domain";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const IN = 25.4;

/** The usual set for inlays: a 1/8 in bit, a 5/16 in bushing and a sleeve of 9/16 in over it (common practice). */
const EIGHTH = { bitDiameterMm: IN / 8 };
const bushing = (inches: number) => ({ by: "bushing", diameterMm: inches * IN }) as const;

// Geometry: what runs on the template is B wide, the bit D. Half of B less half of D on every side.
describe("a bit along a template", () => {
  it.each<[string, TemplateAsked, number, number, number]>([
    [
      "a 3/4 in bushing and a 1/2 in bit",
      { bitDiameterMm: IN / 2, runs: bushing(3 / 4), line: "outside" },
      1 / 8,
      1 / 4,
      3 / 8,
    ],
    [
      "a bearing as wide as the bit",
      { bitDiameterMm: IN / 2, runs: { by: "bearing", diameterMm: IN / 2 }, line: "outside" },
      0,
      1 / 4,
      1 / 4,
    ],
    [
      "a bearing narrower than the bit",
      { bitDiameterMm: IN / 2, runs: { by: "bearing", diameterMm: IN * (3 / 8) }, line: "inside" },
      -1 / 16,
      1 / 4,
      3 / 16,
    ],
    ["the recess of an inlay", { ...EIGHTH, runs: bushing(9 / 16), line: "recess" }, 7 / 32, 1 / 16, 9 / 32],
    ["the plug of an inlay", { ...EIGHTH, runs: bushing(5 / 16), line: "plug" }, 7 / 32, 1 / 16, 9 / 32],
  ])("%s", (_, asked, offset, leastInside, leastTemplate) => {
    const fit = templateFit(asked);
    expect(fit.offsetMm).toBeCloseTo(offset * IN, 9);
    expect(fit.leastInsideRadiusMm).toBeCloseTo(leastInside * IN, 9);
    expect(fit.leastTemplateRadiusMm).toBeCloseTo(leastTemplate * IN, 9);
    expect(fit.findings).toEqual([]);
  });

  it("names the other bushing of an inlay, two diameters of the bit away", () => {
    expect(
      templateFit({ ...EIGHTH, runs: bushing(9 / 16), line: "recess" }).otherBushingDiameterMm,
    ).toBeCloseTo((5 / 16) * IN, 9);
    expect(
      templateFit({ ...EIGHTH, runs: bushing(5 / 16), line: "plug" }).otherBushingDiameterMm,
    ).toBeCloseTo((9 / 16) * IN, 9);
  });

  it("gives the template's radius for a corner, and names both radii of one that it cannot make", () => {
    const asked = { bitDiameterMm: 12, runs: { by: "bushing", diameterMm: 20 }, line: "inside" } as const;
    expect(templateFit({ ...asked, insideRadiusMm: 10 }).templateRadiusMm).toBeCloseTo(14, 9);
    expect(templateFit({ ...asked, insideRadiusMm: 6 })).toMatchObject({
      templateRadiusMm: 10,
      findings: [],
    });
    const { templateRadiusMm, findings } = templateFit({ ...asked, insideRadiusMm: 5 });
    expect(templateRadiusMm).toBeUndefined();
    expect(findings).toMatchObject([
      { code: "inside-corner-too-tight", wantedRadiusMm: 5, leastRadiusMm: 6 },
    ]);
    expect(findings.map((each) => describeTemplateFinding(each, showIn("metric")))).toEqual([
      "An inside corner of 5 mm radius is tighter than this bit makes it: at least 6 mm. Use a bit of 10 mm or less, or finish the corner by hand.",
    ]);
    const square = templateFit({ ...asked, insideRadiusMm: 0 }).findings;
    expect(square.map((each) => describeTemplateFinding(each, showIn("metric")))[0]).toMatch(/6 mm\. Finish/);
  });

  it("wants a bushing that the bit turns free in, for both parts of an inlay", () => {
    const codes = (asked: TemplateAsked) => templateFit(asked).findings.map(({ code }) => code);
    expect(codes({ bitDiameterMm: 12, runs: { by: "bushing", diameterMm: 13 }, line: "outside" })).toEqual([
      "bushing-too-small",
    ]);
    const tight = templateFit({ bitDiameterMm: 6, runs: { by: "bushing", diameterMm: 18 }, line: "recess" });
    // The plug's would be 18 - 12 = 6; it takes more than 6 + 2, so the recess more than 8 + 12.
    expect(tight.otherBushingDiameterMm).toBeUndefined();
    expect(tight.findings).toMatchObject([{ code: "plug-not-possible", aboveMm: 20 }]);
    for (const finding of tight.findings) {
      expect(describeTemplateFinding(finding, showIn("metric"))).toMatch(
        /more than 20 mm, or use a smaller bit\.$/,
      );
    }
  });

  it("refuses sizes that nothing has", () => {
    const asked = {
      bitDiameterMm: Number.NaN,
      runs: { by: "bearing", diameterMm: 0 },
      line: "groove",
    } as const;
    expect(() => templateFit(asked)).toThrow(/\/bitDiameterMm: .*\/runs\/diameterMm: /);
  });

  // A wheel of B rolled along a corner of the template, and the bit's circle in it: the cut's corner is traced, not computed.
  it("cuts the corner that a traced one shows", () => {
    const sizes = fc.tuple(
      fc.double({ min: 3, max: 20, noNaN: true }),
      fc.double({ min: 2.5, max: 20, noNaN: true }),
      fc.double({ min: 0, max: 30, noNaN: true }),
    );
    fc.assert(
      fc.property(sizes, ([bitMm, moreMm, cornerMm]) => {
        const runsMm = bitMm + moreMm;
        const templateMm = runsMm / 2 + cornerMm;
        const fit = templateFit({
          bitDiameterMm: bitMm,
          runs: { by: "bushing", diameterMm: runsMm },
          line: "inside",
          insideRadiusMm: templateMm - (runsMm - bitMm) / 2,
        });
        // The axis runs on a corner of radius templateMm - B/2; the farthest that the bit cuts from the corner's centre is D/2 more.
        const traced = Math.max(
          ...[0, 0.3, 0.7, 1.2, Math.PI / 2].map((angle) =>
            Math.hypot(
              (templateMm - runsMm / 2) * Math.cos(angle) + (bitMm / 2) * Math.cos(angle),
              (templateMm - runsMm / 2) * Math.sin(angle) + (bitMm / 2) * Math.sin(angle),
            ),
          ),
        );
        expect(fit.findings).toEqual([]);
        expect(templateMm - traced).toBeCloseTo(fit.offsetMm, 9);
        expect(fit.templateRadiusMm).toBeCloseTo(templateMm, 9);
      }),
    );
  });
});
