import { describe, expect, it } from "vitest";
import type { Bit } from "../../bit/bit.ts";
import { bitSolid } from "../../bit/solid.ts";
import { LIMITS } from "../../limit/ceiling.ts";
import type { LimitContext } from "../../limit/limit.ts";
import { unbalance } from "../../limit/unbalance.ts";
import { DEFAULT_POLICY } from "../../policy/policy.ts";
import { PRECAUTIONS } from "../../precaution/registry.ts";
import { woodById } from "../../wood/registry.ts";
import { showIn } from "../show.ts";
import { describeLimit, limitTitle } from "./limits.ts";

// That every code has a sentence, and every sentence a code, is held by the types: each table is keyed by the union of
// codes. What is tested here is that the sentences say something, in every unit system, with every value in place.

const SYSTEMS = ["metric", "imperial", "both"] as const;

const LEFT_OPEN = /NaN|undefined|null|\[object|\$\{|Infinity/;

/** A bit in a router to which every limit applies. */
const BIT: Bit = {
  form: { kind: "straight", diameterMm: 19.05, cuttingLengthMm: 25.4 },
  shankDiameterMm: 12.7,
  wings: 2,
  markedMaxRpm: 24_000,
};
const CONTEXT: LimitContext = {
  bit: BIT,
  solid: bitSolid(BIT),
  router: { minRpm: 10_000, maxRpm: 22_000 },
  policy: DEFAULT_POLICY,
  wood: woodById("polyethylene"),
  trials: [{ rpm: 16_000, outcome: "ran-free", isSameRouter: true }],
  massHighG: 100,
  headMassHighG: 50,
  runOutMm: 0.05,
  overhangMm: 30,
};

describe("the limit", () => {
  it("says what the list says, read aloud before it was kept; after a deliberate change: vitest run --update", async () => {
    const lines = LIMITS.flatMap((limit) => {
      const found = limit.find(CONTEXT);
      if (found === undefined) throw new Error(`${limit.name} does not apply`);
      return [
        `${limit.name}: ${limitTitle(limit.name)}`,
        `  ${limit.formula}  [${limit.source}]`,
        ...SYSTEMS.map((units) => `  ${describeLimit({ ...found, rpm: 15_000 }, showIn(units))}`),
      ];
    });
    await expect(`${lines.join("\n")}\n`).toMatchFileSnapshot("./limit-sentences.txt");
  });

  it.each(LIMITS)("$name has a title, and a sentence with every value it gives in place", (limit) => {
    expect(limitTitle(limit.name)).toMatch(/^the /);
    const found = limit.find(CONTEXT);
    if (found === undefined) throw new Error(`${limit.name} does not apply`);
    for (const units of SYSTEMS) {
      const text = describeLimit({ ...found, rpm: 15_000 }, showIn(units));
      expect(text).not.toMatch(LEFT_OPEN);
      expect(text).toMatch(/15,000 rpm.*\.$/);
    }
  });

  it("of unbalance says which of its two bounds holds", () => {
    const said = (balanceGradeMaxMmPerS: number) => {
      const found = unbalance.find({ ...CONTEXT, policy: { ...DEFAULT_POLICY, balanceGradeMaxMmPerS } });
      return found && describeLimit(found, showIn("metric"));
    };
    expect(said(100)).toMatch(/reaches 30 N\.$/);
    expect(said(2.5)).toMatch(/reaches balance grade G 2.5\.$/);
  });
});

describe("precautions", () => {
  it("have each a code of its own", () => {
    const codes = PRECAUTIONS.map(({ code }) => code);
    expect(new Set(codes).size).toBe(codes.length);
  });
});

describe("quantities in sentences", () => {
  it("come in one system, or in both with the imperial in brackets", () => {
    expect(showIn("metric").length(88.9)).toBe("88.9 mm");
    expect(showIn("imperial").length(88.9)).toBe("3-1/2 in");
    expect(showIn("both").length(88.9)).toBe("88.9 mm (3-1/2 in)");
    expect(showIn("both").percent(DEFAULT_POLICY.dialRangeToleranceRatio)).toBe("10 %");
    expect(showIn("both").percent(0.333)).toBe("33 %");
    expect(showIn("both").mark(2.5)).toBe("2.5");
    expect(showIn("metric").fine(0.005)).toBe("5 µm");
  });
});
