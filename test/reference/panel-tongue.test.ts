import { type Bit, DEFAULT_POLICY, type PanelsInput, sizePanels, WOODS } from "@rimwise/domain";
import { describe, expect, it } from "vitest";

const cherry = WOODS.find(({ id }) => id === "black-cherry") ?? WOODS[0];
if (cherry === undefined) throw new Error("no woods");

const base: PanelsInput = {
  openings: [{ widthMm: 300, heightMm: 500 }],
  groove: { depthMm: 10, widthMm: 6.35 },
  thicknessMm: 19,
  wood: cherry,
  sawn: "flat",
  moisture: { percent: 8, tolerancePercent: 1 },
  climate: {
    driest: { relativeHumidityPercent: 30, temperatureC: 21.1 },
    wettest: { relativeHumidityPercent: 60, temperatureC: 21.1 },
  },
  policy: DEFAULT_POLICY,
};

// 89 mm across, a straight face 12 mm high and 30 mm wide, then a flat tongue of 8 mm beside a pilot of 12.9 mm.
const BEVEL_FORM = {
  kind: "panel-raising" as const,
  diameterMm: 88.9,
  pilotDiameterMm: 12.9,
  profileHeightMm: 12,
  face: "bevel" as const,
  tongueWidthMm: 8,
  shoulderHeightMm: 1.5,
  pilotHeightMm: 5,
};
const BEVEL: Bit = { form: BEVEL_FORM, shankDiameterMm: 12.7, wings: 2 };

describe("the tongue against the groove, by the geometry of the bit", () => {
  const raised = (more: Partial<PanelsInput>) => sizePanels({ ...base, bit: BEVEL, ...more });

  // The flat of the tongue is cut at the pilot's upper end, 5 mm from the tip: 19 − (18 − 5) = 6 mm are left. The panel
  // reaches in 9.2 mm, 1.2 mm past the flat, where the face has fallen by 1.2·12/30.
  it("is as thick as what the face leaves", () => {
    const [panel] = raised({ heightMm: 18 }).panels;
    const deepestMm = Math.max(panel?.width.engagementMostMm ?? 0, panel?.height.engagementMostMm ?? 0);
    expect(deepestMm).toBeCloseTo(9.2, 1);
    expect(panel?.tongue.thicknessMm).toBeCloseTo(6 + ((deepestMm - 8) * 12) / 30, 9);
    expect(panel?.tongue.fit).toBe("wedges");
  });

  it("goes in as far as its face is thinner than the groove", () => {
    const [panel] = raised({ heightMm: 17.75, policy: { ...DEFAULT_POLICY, movementSpreadRatio: 0 } }).panels;
    // Swollen by cherry's 0.00248·4 and with 0.1 mm of play: (6.35 − 0.1)/1.00992 is thinner than the flat.
    expect(panel?.tongue.fit).toBe("too-thick");
    const [thinner] = raised({
      heightMm: 18.25,
      policy: { ...DEFAULT_POLICY, movementSpreadRatio: 0 },
    }).panels;
    expect(thinner?.tongue.lengthMm).toBeCloseTo(8 + ((6.25 / 1.00992 - 5.75) * 30) / 12, 6);
  });

  it.each([
    ["too thick if the bit is too low", 19, "too-thick"],
    ["loose enough to rattle in thinner stock", 17, "rattles"],
  ])("is %s", (_, thicknessMm, fit) => {
    expect(raised({ thicknessMm, heightMm: 17 }).panels[0]?.tongue.fit).toBe(fit);
  });

  it("is found a height where it fits when none is given", () => {
    const { panels, raising, assumptions } = raised({});
    expect(panels[0]?.tongue.fit).not.toBe("too-thick");
    expect(panels[0]?.tongue.playLeastMm).toBeGreaterThanOrEqual(0.1 - 1e-9);
    expect(panels[0]?.tongue.playLeastMm).toBeLessThan(0.21);
    expect(assumptions).toContainEqual({ code: "raising-height-found", heightMm: raising?.heightMm });
  });

  it("is cut away if the bit stands higher than the panel is thick and its pilot", () => {
    const [panel] = raised({ thicknessMm: 10, heightMm: 16 }).panels;
    expect(panel?.tongue.fit).toBe("cut-away");
    expect(panel?.verdict).toBe("does-not-fit");
  });

  // Common practice: between a profile and its back-cutter the tongue is as thick as the bearing is high.
  it("is as thick as the bearing is high if a back-cutter relieves the other face", () => {
    const backCutter = { pilotHeightMm: 6, backCutterDiameterMm: 38.9, backCutterHeightMm: 6.35 };
    const bit: Bit = { ...BEVEL, form: { ...BEVEL_FORM, ...backCutter, tongueWidthMm: 11 } };
    const [panel] = raised({ bit, heightMm: 18 }).panels;
    expect(panel?.tongue.thicknessMm).toBeCloseTo(6, 9);
  });

  // From a pilot of 12.9 to a rim of 88.9 mm the bit takes 38 mm off each edge; what is in the groove does not show.
  it("leaves a reveal of what the bit takes less what the groove hides", () => {
    const [panel] = raised({}).panels;
    expect(panel?.tongue.fieldEdgeMm).toBeCloseTo(38, 9);
    expect(panel?.reveal?.width.nowMm).toBeCloseTo(38 - 7.4, 9);
  });

  it("a panel too small for the bit has no field left", () => {
    const [panel] = raised({ openings: [{ widthMm: 55, heightMm: 300 }] }).panels;
    expect(panel?.findings).toContainEqual(expect.objectContaining({ code: "no-field-left", side: "width" }));
    expect(panel?.verdict).toBe("does-not-fit");
  });

  it("a flat panel of the groove's own thickness slides in", () => {
    const [panel] = sizePanels({ ...base, thicknessMm: 6 }).panels;
    expect(panel?.tongue).toMatchObject({ shape: "flat", fit: "fits", lengthMm: 10 });
    const [thick] = sizePanels(base).panels;
    expect(thick?.findings.map(({ code }) => code)).toEqual(["edge-needs-thinning"]);
  });

  it("is not computed for a bit that raises no panels", () => {
    const bit: Bit = { ...BEVEL, form: { kind: "round-over", diameterMm: 38.1, radiusMm: 12.7 } };
    expect(() => raised({ bit })).toThrow("/bit/form/kind: cut-does-not-suit-bit");
  });
});
