import { describe, expect, it } from "vitest";
import { DEFAULT_POLICY, policyFaults, strictestPolicy } from "../policy/policy.ts";
import { afterMishaps } from "./after-mishap.ts";

describe("what is still to do after a mishap", () => {
  it("runs slower with a lighter last pass after burning", () => {
    expect(afterMishaps([{ outcome: "scorched", rpm: 16_000 }], DEFAULT_POLICY)).toEqual({
      speedMaxRpm: 13_600,
      finishBiteMm: 0.8 * 0.7,
    });
  });

  it("runs slower in lighter passes after chatter", () => {
    expect(afterMishaps([{ outcome: "chattered", rpm: 16_000 }], DEFAULT_POLICY)).toEqual({
      speedMaxRpm: 13_600,
      cutForceMaxN: 105,
      handheldCutForceMaxN: 56,
      passSectionMaxMm2: 105,
      handheldPassSectionMaxMm2: 56,
    });
  });

  it("is cut in lighter passes after tear-out, no slower", () => {
    const layer = afterMishaps([{ outcome: "tore-out", rpm: 16_000 }], DEFAULT_POLICY);
    expect(layer).toMatchObject({ cutForceMaxN: 105, finishBiteMm: 0.8 * 0.7 });
    expect(layer?.speedMaxRpm).toBeUndefined();
  });

  it("goes by the slowest of several", () => {
    const mishaps = [12_000, 16_000].map((rpm) => ({ outcome: "scorched", rpm }) as const);
    expect(afterMishaps(mishaps, DEFAULT_POLICY)?.speedMaxRpm).toBe(10_200);
  });

  it("only ever tightens, within what the policy takes, however often", () => {
    let policy = DEFAULT_POLICY;
    let rpm = 24_000;
    for (let times = 0; times < 40; times += 1) {
      const layer =
        afterMishaps(
          [
            { outcome: "chattered", rpm },
            { outcome: "tore-out", rpm },
          ],
          policy,
        ) ?? {};
      expect(policyFaults(layer)).toEqual([]);
      const next = strictestPolicy(policy, layer);
      expect(next.cutForceMaxN).toBeLessThanOrEqual(policy.cutForceMaxN);
      [policy, rpm] = [next, layer.speedMaxRpm ?? rpm];
    }
  });

  it("says nothing of what went well, and of a bit that came loose", () => {
    expect(afterMishaps([], DEFAULT_POLICY)).toBeUndefined();
    expect(afterMishaps([{ outcome: "came-loose", rpm: 16_000 }], DEFAULT_POLICY)).toBeUndefined();
  });
});
