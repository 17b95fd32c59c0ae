import {
  BIT_RANGES,
  GIVEN_OUTLINE_RANGES,
  GIVEN_SEGMENT_RANGES,
  PANEL_RANGES,
  woodById,
} from "@rimwise/domain";
import { describe, expect, it } from "vitest";

// What the service takes is a promise to its callers: a range that changes is changed here too.

describe("the accepted ranges (ours)", () => {
  it("of a bit", () => {
    expect(BIT_RANGES).toEqual({
      shankDiameterMm: { min: 3, max: 20 },
      wings: { min: 1, max: 12 },
      massG: { min: 1, max: 3000 },
      runOutMm: { min: 0, max: 1 },
      stickOutMm: { min: 0, max: 60 },
      markedMaxRpm: { min: 1000, max: 60_000 },
    });
  });

  it("of an outline given by hand", () => {
    expect(GIVEN_SEGMENT_RANGES).toEqual({
      toMm: { min: 0, max: 120 },
      radiusMm: { min: 0, max: 60 },
      arcRadiusMm: { min: 0.1, max: 500 },
    });
    expect(GIVEN_OUTLINE_RANGES).toEqual({
      diameterMm: { min: 1, max: 120 },
      segments: { min: 1, max: 60 },
    });
  });

  it("of a panel; air from -1.2 to 60 °C, wood up to fibre saturation at 30 % (Wood Handbook chapter 4)", () => {
    expect(PANEL_RANGES).toMatchObject({
      openings: { min: 1, max: 50 },
      count: { min: 1, max: 100 },
      openingMm: { min: 50, max: 3000 },
      panelMm: { min: 50, max: 3100 },
      thicknessMm: { min: 3, max: 60 },
      grooveDepthMm: { min: 3, max: 40 },
      grooveWidthMm: { min: 2, max: 40 },
      moisturePercent: { min: 0, max: 30 },
      moistureTolerancePercent: { min: 0, max: 10 },
      temperatureC: { min: -1.2, max: 60 },
      relativeHumidityPercent: { min: 0, max: 100 },
    });
  });
});

describe("the densities of sheets and plastics in kg/m³, from memory", () => {
  it.each([
    ["mdf", 750],
    ["plywood", 650],
    ["particleboard", 680],
    ["hardboard", 950],
    ["solid-surface", 1700],
    ["acrylic", 1190],
    ["polycarbonate", 1200],
    ["polyethylene", 955],
  ])("%s: %i", (id, density) => {
    expect(woodById(id)?.densityKgPerM3.value).toBe(density);
  });
});
