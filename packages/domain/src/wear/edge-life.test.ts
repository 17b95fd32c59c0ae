import { describe, expect, it } from "vitest";
import { DEFAULT_POLICY, strictestPolicy } from "../policy/policy.ts";
import { DomainError } from "../quantity/fault.ts";
import { PLASTICS, SHEETS } from "../wood/materials.ts";
import { WOODS, woodById } from "../wood/registry.ts";
import { edgeLife, WEAR_RANGES } from "./edge-life.ts";
import { TOOTH_MATERIALS } from "./tooth-material.ts";
import { wearFactor } from "./wear-factor.ts";

const wood = (id: string) => {
  const found = woodById(id);
  if (found === undefined) throw new Error(id);
  return found;
};
const CHERRY = wood("black-cherry");
const MDF = wood("mdf");

// The figures as decided (ours, judgement): a changed one is a changed decision, and is changed here too.
describe("how abrasive a material is", () => {
  it.each([
    ["plywood", 2, 6],
    ["mdf", 2.5, 7.5],
    ["hardboard", 2.5, 7.5],
    ["particleboard", 3, 9],
    ["solid-surface", 3, 9],
    ["acrylic", 0.7, 0.7],
  ])("%s", (id, carbide, steel) => {
    expect(wearFactor(wood(id), "carbide-tipped")).toBe(carbide);
    expect(wearFactor(wood(id), "high-speed-steel")).toBe(steel);
  });

  it("solid wood goes by its density, over 600 kg/m³, and never under a half", () => {
    if (CHERRY.kind !== "species") throw new Error("cherry is a species");
    expect(wearFactor(CHERRY, "carbide-tipped")).toBeCloseTo(CHERRY.densityKgPerM3.value / 600, 12);
    const balsa = { ...CHERRY, densityKgPerM3: { value: 160, provenance: "memory" as const } };
    expect(wearFactor(balsa, "carbide-tipped")).toBe(0.5);
  });

  it("a board nobody has heard of is taken as the most abrasive one", () => {
    const [board] = SHEETS;
    if (board === undefined) throw new Error("no board");
    const factors = SHEETS.map((each) => wearFactor(each, "carbide-tipped"));
    expect(wearFactor({ ...board, id: "unheard-of" }, "carbide-tipped")).toBe(Math.max(...factors));
  });

  it("glue-bound boards dull edges more than any plain solid wood (common practice)", () => {
    const solid = WOODS.filter(({ kind, id }) => kind === "species" && id !== "teak");
    const hardest = Math.max(...solid.map((each) => wearFactor(each, "carbide-tipped")));
    for (const sheet of SHEETS) expect(wearFactor(sheet, "carbide-tipped")).toBeGreaterThan(hardest);
  });

  it("teak holds silica: it dulls edges more than denser woods, and steel above all (common practice)", () => {
    const teak = wood("teak");
    if (teak.kind !== "species") throw new Error("teak is a species");
    expect(wearFactor(teak, "carbide-tipped")).toBeCloseTo((teak.densityKgPerM3.value / 600) * 2.5, 12);
    expect(wearFactor(teak, "carbide-tipped")).toBeGreaterThan(wearFactor(wood("jatoba"), "carbide-tipped"));
    expect(wearFactor(teak, "high-speed-steel")).toBeCloseTo(3 * wearFactor(teak, "diamond"), 12);
  });

  it("the filled plastics named are among those there are", () => {
    expect(PLASTICS.map(({ id }) => id)).toContain("solid-surface");
  });
});

describe("an edge's life", () => {
  it("is counted in metres of middling solid wood", () => {
    const uses = [
      { wood: MDF, metres: 100 },
      { wood: wood("particleboard"), metres: 50 },
    ];
    expect(edgeLife({ toothMaterial: "carbide-tipped", uses }, DEFAULT_POLICY)).toEqual({
      usedEquivalentM: 400,
      expectedM: 800,
      usedRatio: 0.5,
      basis: "estimate",
      dueForSharpening: false,
    });
  });

  it("is due at the policy's share of it, not only beyond", () => {
    const at = (metres: number) =>
      edgeLife({ toothMaterial: "carbide-tipped", uses: [{ wood: MDF, metres }] }, DEFAULT_POLICY);
    expect(at(255).dueForSharpening).toBe(false);
    expect(at(256).dueForSharpening).toBe(true);
  });

  it("is the middle one of the bit's own lives, without mishaps", () => {
    const life = (...pastLives: readonly number[]) =>
      edgeLife({ toothMaterial: "carbide-tipped", uses: [], pastLives }, DEFAULT_POLICY);
    expect(life(300, 500, 2000)).toMatchObject({ expectedM: 500, basis: "own-history" });
    expect(life(0, 0.9, 600)).toMatchObject({ expectedM: 600, basis: "own-history" });
    expect(life(1)).toMatchObject({ expectedM: 1, basis: "own-history" });
    expect(life(0, 0.99)).toMatchObject({ expectedM: 800, basis: "estimate" });
  });

  it("follows a policy that was tightened, for an unknown material the shortest of all", () => {
    const policy = strictestPolicy({ edgeLifeDiamondM: 40 });
    const expected = TOOTH_MATERIALS.map(
      (toothMaterial) => edgeLife({ toothMaterial, uses: [] }, policy).expectedM,
    );
    expect(expected).toEqual([80, 800, 1000, 40, 40]);
    expect(edgeLife({ toothMaterial: "unknown", uses: [] }, DEFAULT_POLICY).expectedM).toBe(80);
  });

  it("is refused for metres that cannot be", () => {
    const uses = [
      { wood: MDF, metres: 1 },
      { wood: MDF, metres: -1 },
    ];
    const pastLives = [Number.POSITIVE_INFINITY];
    try {
      edgeLife({ toothMaterial: "unknown", uses, pastLives }, DEFAULT_POLICY);
      expect.unreachable();
    } catch (error) {
      if (!(error instanceof DomainError)) throw error;
      expect(error.faults).toMatchObject([
        { pointer: "/uses/1/metres", code: "out-of-range" },
        { pointer: "/pastLives/0", code: "not-finite" },
      ]);
    }
    expect(WEAR_RANGES).toEqual({ metres: { min: 0, max: 1e6 }, pastLifeM: { min: 0, max: 1e9 } });
  });
});
