import {
  DEFAULT_POLICY,
  type Opening,
  PANEL_RANGES,
  type PanelsInput,
  sizePanels,
  woodById,
} from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { panelMovement } from "../../packages/domain/src/panel/year-movement.ts";

const cherry = speciesById("black-cherry");
const whiteFir = speciesById("white-fir");

// A living room's year at 70 °F (21.1 °C).
const ROOM = {
  driest: { relativeHumidityPercent: 30, temperatureC: 21.1 },
  wettest: { relativeHumidityPercent: 60, temperatureC: 21.1 },
};
const DOOR: Opening = { widthMm: 300, heightMm: 500 };
const base: PanelsInput = {
  openings: [DOOR],
  groove: { depthMm: 10, widthMm: 6.35 },
  thicknessMm: 19,
  wood: cherry,
  sawn: "flat",
  moisture: { percent: 8, tolerancePercent: 1 },
  climate: ROOM,
  policy: DEFAULT_POLICY,
};

describe("movement through the year against the handbook", () => {
  const movement = (wood: typeof cherry, from: number, driestPercent: number, wettestPercent: number) =>
    panelMovement({
      wood,
      sawn: "flat",
      now: { percent: from, tolerancePercent: 0 },
      year: { driestPercent, wettestPercent },
      spreadRatio: 0,
    }).across;

  // Wood Handbook p. 13-17: a flatsawn white fir board of 232 mm goes from 8 to 11 % and swells 1.7 mm; 1.7052 by the arithmetic.
  it("swells the white fir board by 1.7 mm", () => {
    const { toWettestRatio, swellsMostRatio } = movement(whiteFir, 8, 8, 11);
    expect(232 * toWettestRatio).toBeCloseTo(1.7, 1);
    expect(232 * toWettestRatio).toBeCloseTo(1.7052, 4);
    expect(swellsMostRatio).toBeCloseTo(toWettestRatio, 12);
  });

  // Wood Handbook eq. (13-2) with Table 13-5: 16·0.00248·4.
  it("swells 16 in of cherry by 0.15872 in from 7 to 11 %", () => {
    expect(16 * movement(cherry, 7, 7, 11).toWettestRatio).toBeCloseTo(0.15872, 5);
  });

  // Wood Handbook eq. (13-3) outside 6 to 14 %, with the published 7.1 %: (M_F − 8)/(30·100/7.1 − 30 + 8).
  it("takes the other equation outside 6 to 14 %", () => {
    const { toDriestRatio, toWettestRatio } = movement(cherry, 8, 4, 16);
    expect(toDriestRatio).toBeCloseTo(-4 / (3000 / 7.1 - 22), 12);
    expect(toWettestRatio).toBeCloseTo(8 / (3000 / 7.1 - 22), 12);
  });

  // From 14.001 % eq. (13-3) gives 8.001/(3000/7.1 − 30 + 14.001) = 0.01968, from 14 % eq. (13-2) gives 8·0.00248 = 0.01984.
  it("takes the larger if the moisture may be on either side of the change of equation", () => {
    const { across } = panelMovement({
      wood: cherry,
      sawn: "flat",
      now: { percent: 13.5, tolerancePercent: 0.501 },
      year: { driestPercent: 6, wettestPercent: 11 },
      spreadRatio: 0,
    });
    expect(across.shrinksMostRatio).toBeCloseTo(8 * 0.00248, 9);
  });

  // Eq. (4-5) and (13-2), computed outside this project with mpmath: 6.169755 to 10.965222 %, 4.757104 mm.
  it("swells 400 mm of cherry by 4.757104 mm from 30 to 60 % humidity", () => {
    const { panels, year } = sizePanels({
      ...base,
      moisture: { percent: 6.169755, tolerancePercent: 0 },
      openings: [{ ...DOOR, panel: { widthMm: 400, heightMm: 500 } }],
    });
    expect(year.driestPercent).toBeCloseTo(6.169755, 6);
    expect(year.wettestPercent).toBeCloseTo(10.965222, 6);
    expect((panels[0]?.width.wettest.sizeMm ?? 0) - 400).toBeCloseTo(4.757104, 5);
  });

  // Wood Handbook Table 13-5: cherry moves 0.00248 tangentially and 0.00126 radially.
  it("moves a quartersawn panel by the radial coefficient, about half as much", () => {
    const growth = (sawn: "flat" | "quarter") => {
      const width = sizePanels({ ...base, sawn }).panels[0]?.width;
      return width === undefined ? Number.NaN : width.wettest.sizeMm / width.cutMm - 1;
    };
    expect(growth("quarter") / growth("flat")).toBeCloseTo(0.00126 / 0.00248, 9);
  });

  // Wood Handbook chapter 4, from memory: 0.1 to 0.2 % from green to oven-dry; 0.2 over 30 % is taken.
  it("hardly moves along the grain", () => {
    const height = sizePanels(base).panels[0]?.height;
    expect((height?.wettest.sizeMm ?? 0) / (height?.cutMm ?? 1) - 1).toBeCloseTo(
      (0.002 * (10.965222 - 8)) / 30,
      8,
    );
  });
});

describe("the size to cut, by hand", () => {
  // At the worst from 7 to 11 %, 15 % more than average: 0.00248·4·1.15 = 0.011408; (300 + 20 − 1.6)/1.011408 = 314.81.
  // At the worst from 9 to 6 %: 0.00248·3·1.15 = 0.008556; (314.8·(1 − 0.008556) − 300)/2 = 6.0533.
  it("a cherry door panel 300 mm between stiles, in 10 mm grooves", () => {
    const width = sizePanels(base).panels[0]?.width;
    expect(width?.cutMm).toBe(314.8);
    expect(width?.engagementLeastMm).toBeCloseTo(6.0533, 4);
    expect(width?.gapLeastMm).toBeCloseTo((320 - 314.8 * 1.011408) / 2, 9);
    expect(width?.now.gapMm).toBeCloseTo(2.6, 9);
  });

  // Along the grain at the worst: 0.002·4/30·1.15 = 0.000307; (500 + 20 − 1.6)/1.000307 = 518.24.
  it("and 500 mm between rails", () => {
    expect(sizePanels(base).panels[0]?.height.cutMm).toBe(518.2);
  });

  it("turns with the grain", () => {
    const [panel] = sizePanels({
      ...base,
      openings: [{ widthMm: 500, heightMm: 300, grainAlong: "width" }],
    }).panels;
    expect(panel?.height.cutMm).toBe(314.8);
    expect(panel?.width.cutMm).toBe(518.2);
  });

  // Common practice: sheet goods are sized to the groove less a clearance, whatever the air.
  it("a plywood panel fills its grooves but for the clearance", () => {
    const [panel] = sizePanels({ ...base, wood: woodById("plywood") ?? cherry }).panels;
    expect(panel?.width.cutMm).toBe(318.4);
    expect(panel?.width.gapLeastMm).toBeCloseTo(0.8, 9);
  });

  it("a wide panel in a shallow groove would show a gap, and a groove of the depth advised holds it", () => {
    const openings = [{ widthMm: 900, heightMm: 500 }];
    const shallow = sizePanels({ ...base, openings, groove: { depthMm: 7, widthMm: 6.35 } }).panels[0];
    expect(shallow?.verdict).toBe("does-not-fit");
    const finding = shallow?.findings.find(({ code }) => code === "panel-would-show-gap");
    expect(finding).toMatchObject({ severity: "refuse", side: "width" });
    const depthMm = shallow?.width.grooveDepthNeededMm ?? 0;
    const held = sizePanels({ ...base, openings, groove: { ...base.groove, depthMm } }).panels[0];
    expect(held?.width.engagementLeastMm).toBeGreaterThanOrEqual(3 - 1e-9);
    expect(held?.width.engagementLeastMm).toBeLessThan(3.1);
  });

  // 318 mm at 8 % is 321 mm at 12 %: more than the 320 mm between the groove bottoms.
  it("a panel cut to the full width in dry weather would bottom", () => {
    const openings = [{ ...DOOR, panel: { widthMm: 318, heightMm: 518 } }];
    const [panel] = sizePanels({ ...base, openings }).panels;
    expect(panel?.verdict).toBe("does-not-fit");
    expect(panel?.findings).toContainEqual(
      expect.objectContaining({ code: "panel-would-bottom", side: "width" }),
    );
  });

  it("says when the wood is wetter than it will ever be", () => {
    const { findings } = sizePanels({ ...base, moisture: { percent: 14 } });
    expect(findings.map(({ code }) => code)).toEqual(["moisture-outside-year"]);
    expect(sizePanels(base).findings).toEqual([]);
  });
});

it("counts what a case of doors and drawers comes to", () => {
  const { totals, edges } = sizePanels({
    ...base,
    wood: cherry,
    thicknessMm: 6,
    openings: [
      { ...DOOR, count: 2 },
      { widthMm: 500, heightMm: 300, grainAlong: "width", count: 3 },
    ],
  });
  // Five alike, turned or not: 314.8 across the grain, 518.2 along it.
  expect(totals.panels).toBe(5);
  expect(totals.areaMm2).toBeCloseTo(5 * 314.8 * 518.2, 6);
  expect(edges).toEqual([
    { lengthMm: 314.8, grain: "end", count: 10 },
    { lengthMm: 518.2, grain: "long", count: 10 },
  ]);
  expect(totals.edgeLengthMm).toBeCloseTo(10 * (314.8 + 518.2), 9);
});

it("takes wood up to fibre saturation at 30 %, and air from 30 °F, where the table starts (Wood Handbook chapter 4)", () => {
  const { moisturePercent, temperatureC } = PANEL_RANGES;
  expect(moisturePercent).toEqual({ min: 0, max: 30 });
  expect(temperatureC.min).toBe(Math.floor(((30 - 32) / 1.8) * 10) / 10);
});

function speciesById(id: string) {
  const wood = woodById(id);
  if (wood?.kind !== "species") throw new Error(`no species ${id}`);
  return wood;
}
