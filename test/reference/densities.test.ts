import { woodById } from "@rimwise/domain";
import { describe, expect, it } from "vitest";

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
