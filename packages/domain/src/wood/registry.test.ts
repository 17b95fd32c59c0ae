import { describe, expect, it } from "vitest";
import { SPECIES, WOODS, woodById } from "./registry.ts";

describe("the printed tables", () => {
  // Wood Handbook Table 13-5, p. 13-16: radial and tangential change coefficients as read there.
  it.each([
    ["red-alder", 0.00151, 0.00256],
    ["white-ash", 0.00169, 0.00274],
    ["black-ash", 0.00172, 0.00274],
    ["quaking-aspen", 0.00119, 0.00234],
    ["american-basswood", 0.0023, 0.0033],
    ["american-beech", 0.0019, 0.00431],
    ["paper-birch", 0.00219, 0.00304],
    ["yellow-birch", 0.00256, 0.00338],
    ["butternut", 0.00116, 0.00223],
    ["black-cherry", 0.00126, 0.00248],
    ["american-chestnut", 0.00116, 0.00234],
    ["eastern-cottonwood", 0.00133, 0.00327],
    ["american-elm", 0.00144, 0.00338],
    ["hackberry", 0.00165, 0.00315],
    ["pecan-hickory", 0.00169, 0.00315],
    ["black-locust", 0.00158, 0.00252],
    ["bigleaf-maple", 0.00126, 0.00248],
    ["red-maple", 0.00137, 0.00289],
    ["silver-maple", 0.00102, 0.00252],
    ["sugar-maple", 0.00165, 0.00353],
    ["red-oak", 0.00158, 0.00369],
    ["white-oak", 0.0018, 0.00365],
    ["sweetgum", 0.00183, 0.00365],
    ["american-sycamore", 0.00172, 0.00296],
    ["black-walnut", 0.0019, 0.00274],
  ])("give %s its coefficients", (id, radial, tangential) => {
    expect(woodById(id)).toMatchObject({
      changeCoefficient: {
        radial: { value: radial, provenance: "looked-up" },
        tangential: { value: tangential, provenance: "looked-up" },
      },
    });
  });

  // Wood Handbook Tables 5-3b and 5-5b: specific gravity at 12 % and side hardness in lbf, as read there. 1 lbf = 4.4482216152605 N.
  it.each([
    ["ponderosa-pine", 0.4, 460],
    ["red-pine", 0.46, 560],
    ["shortleaf-pine", 0.51, 690],
    ["sugar-pine", 0.36, 380],
    ["western-white-pine", 0.38, 420],
    ["redwood", 0.4, 480],
  ])("give %s its weight and hardness", (id, gravity, pounds) => {
    expect(woodById(id)).toMatchObject({
      densityKgPerM3: { value: Math.round(1000 * gravity * 1.12), provenance: "derived" },
      sideHardnessN: { value: Math.round(pounds * 4.4482216152605), provenance: "looked-up" },
    });
  });

  // Basic specific gravity as read there. G12 = Gb/(1 − 0.265·0.6·Gb) (Wood Handbook chapter 4, from memory), times 1120, by hand.
  it.each([
    ["teak", 675, 1000],
    ["spanish-cedar", 491, 600],
    ["dark-red-meranti", 556, 780],
  ])("give %s a weight from its green volume", (id, density, pounds) => {
    expect(woodById(id)).toMatchObject({
      densityKgPerM3: { value: density, provenance: "derived" },
      sideHardnessN: { value: Math.round(pounds * 4.4482216152605), provenance: "looked-up" },
    });
  });
});

describe("the woods", () => {
  it("are distinguished by their ids, written in kebab-case", () => {
    const ids = WOODS.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
  });

  it("count 54 species, 4 sheet goods and 4 plastics", () => {
    expect(SPECIES).toHaveLength(54);
    expect(WOODS).toHaveLength(62);
  });

  it("weigh what wood can weigh, and move more along the rings than across them", () => {
    for (const species of SPECIES) {
      expect(species.densityKgPerM3.value, species.id).toBeGreaterThan(300);
      // The cell wall itself weighs about 1500 kg/m³ (common practice).
      expect(species.densityKgPerM3.value, species.id).toBeLessThan(1500);
      const { radial, tangential } = species.changeCoefficient;
      expect(tangential.value, species.id).toBeGreaterThan(radial.value);
    }
  });

  it("call a weight remembered if what it comes from is remembered", () => {
    expect(woodById("american-sycamore")).toMatchObject({ densityKgPerM3: { provenance: "memory" } });
    expect(woodById("purpleheart")).toMatchObject({ densityKgPerM3: { provenance: "memory" } });
    expect(woodById("mdf")).toMatchObject({ kind: "sheet", densityKgPerM3: { provenance: "memory" } });
  });

  // Common practice: every plastic softens where a bit rubs; only wood in its layers or whole has grain.
  it("say which melt and which have grain", () => {
    for (const wood of WOODS) expect(wood.isMeltable, wood.id).toBe(wood.kind === "plastic");
    const grained = WOODS.filter(({ hasGrain, kind }) => hasGrain && kind !== "species");
    expect(grained.map(({ id }) => id)).toEqual(["plywood"]);
    expect(SPECIES.every(({ hasGrain }) => hasGrain)).toBe(true);
  });

  it("have none of a made-up name", () => {
    expect(woodById("ironbark-of-nowhere")).toBeUndefined();
  });
});
