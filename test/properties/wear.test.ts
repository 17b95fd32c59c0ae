import {
  DEFAULT_POLICY,
  edgeLife,
  strictestPolicy,
  TOOTH_MATERIALS,
  WOODS,
  wearFactor,
} from "@rimwise/domain";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const woods = fc.constantFrom(...WOODS);
const toothMaterials = fc.constantFrom(...TOOTH_MATERIALS);
const uses = fc.array(fc.record({ wood: woods, metres: number(0, 5000) }), { maxLength: 6 });
const pastLives = fc.array(number(0, 5000), { maxLength: 5 });
const policies = fc
  .record({ edgeLifeDiamondM: number(1, 8000), edgeLifeCarbideTippedM: number(1, 800) })
  .map((layer) => strictestPolicy(layer));

describe("an edge's life", () => {
  it("is used up by every metre more, and by nothing else", () => {
    fc.assert(
      fc.property(
        toothMaterials,
        uses,
        pastLives,
        woods,
        number(0.01, 500),
        (tooth, cuts, past, wood, metres) => {
          const input = { toothMaterial: tooth, uses: cuts, pastLives: past };
          const before = edgeLife(input, DEFAULT_POLICY);
          const after = edgeLife({ ...input, uses: [...cuts, { wood, metres }] }, DEFAULT_POLICY);
          expect(after.usedRatio).toBeGreaterThan(before.usedRatio);
          expect(after.expectedM).toBe(before.expectedM);
          expect(before.dueForSharpening && !after.dueForSharpening).toBe(false);
        },
      ),
    );
  });

  it("is never longer in a more abrasive wood", () => {
    fc.assert(
      fc.property(toothMaterials, uses, woods, woods, number(0, 5000), (tooth, cuts, one, other, metres) => {
        const ratio = (wood: typeof one) =>
          edgeLife({ toothMaterial: tooth, uses: [...cuts, { wood, metres }] }, DEFAULT_POLICY).usedRatio;
        const isMoreAbrasive = wearFactor(one, tooth) >= wearFactor(other, tooth);
        if (isMoreAbrasive) expect(ratio(one)).toBeGreaterThanOrEqual(ratio(other));
        else expect(ratio(one)).toBeLessThanOrEqual(ratio(other));
      }),
    );
  });

  it("of an unknown material is never longer than that of a known one", () => {
    fc.assert(
      fc.property(toothMaterials, uses, pastLives, policies, (tooth, cuts, past, policy) => {
        const unknown = edgeLife({ toothMaterial: "unknown", uses: cuts, pastLives: past }, policy);
        const known = edgeLife({ toothMaterial: tooth, uses: cuts, pastLives: past }, policy);
        expect(unknown.expectedM).toBeLessThanOrEqual(known.expectedM);
        expect(unknown.usedRatio).toBeGreaterThanOrEqual(known.usedRatio);
      }),
    );
  });

  it("lies between the shortest and the longest of the bit's own, if there are some", () => {
    fc.assert(
      fc.property(
        toothMaterials,
        fc.array(number(1, 5000), { minLength: 1, maxLength: 9 }),
        (tooth, past) => {
          const { expectedM, basis } = edgeLife(
            { toothMaterial: tooth, uses: [], pastLives: past },
            DEFAULT_POLICY,
          );
          expect(basis).toBe("own-history");
          expect(expectedM).toBeGreaterThanOrEqual(Math.min(...past));
          expect(expectedM).toBeLessThanOrEqual(Math.max(...past));
        },
      ),
    );
  });
});
