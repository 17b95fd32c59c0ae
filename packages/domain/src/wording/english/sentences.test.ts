import { describe, expect, it } from "vitest";
import { LIMITS } from "../../limit/ceiling.ts";
import { DEFAULT_POLICY } from "../../policy/policy.ts";
import { PRECAUTIONS } from "../../precaution/registry.ts";
import { showIn } from "../show.ts";
import { describeLimit, limitTitle } from "./limits.ts";

// That every code has a sentence, and every sentence a code, is held by the types: each table is keyed by the union of
// codes. What is tested here is that the sentences say something, in every unit system, with every value in place.

const SYSTEMS = ["metric", "imperial", "both"] as const;

const LEFT_OPEN = /NaN|undefined|null|\[object|\$\{|Infinity/;

describe("limits", () => {
  it.each(LIMITS.map(({ name }) => name))(
    "%s has a title, and a sentence for every value it gives",
    (name) => {
      expect(limitTitle(name)).toMatch(/^the /);
      const definition = LIMITS.find((each) => each.name === name);
      expect(definition?.formula.length).toBeGreaterThan(3);
      expect(definition?.source.length).toBeGreaterThan(3);
    },
  );

  it("leave no value open", () => {
    const values = {
      diameterMm: 50,
      rimSpeedMaxMPerS: 56,
      massHighG: 200,
      runOutMm: 0.05,
      unbalanceForceMaxN: 30,
      balanceGradeMaxMmPerS: 100,
      isByForce: 0,
      shankDiameterMm: 12.7,
      overhangMm: 20,
      rigidRpm: 90000,
      leftMPa: 40,
      bodyStressMaxMPa: 100,
      tipMassAssumedG: 2,
      tipForceMaxN: 1000,
    };
    for (const { name, strength, formula, source } of LIMITS) {
      for (const units of SYSTEMS) {
        const text = describeLimit({ name, strength, formula, source, rpm: 15000, values }, showIn(units));
        expect(text, name).not.toMatch(LEFT_OPEN);
        expect(text, name).toMatch(/15,000 rpm.*\.$/);
      }
    }
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
