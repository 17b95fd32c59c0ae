import { describe, expect, it } from "vitest";
import type { Bit } from "../bit/bit.ts";
import { bitSolid } from "../bit/solid.ts";
import { DEFAULT_POLICY } from "../policy/policy.ts";
import { woodById } from "../wood/registry.ts";
import { chipOf, chipThinningFactor } from "./chip.ts";
import { loadedPass, motorTorqueNm } from "./constraints.ts";
import { FORCE_BAND_FACTOR, specificCuttingForceNPerMm2 } from "./cutting-force.ts";
import { secondsAlong } from "./feed.ts";
import { passBetween } from "./pass-geometry.ts";
import { cutSetup } from "./setup.ts";

const wood = (id: string) => {
  const found = woodById(id);
  if (found === undefined) throw new Error(`no wood ${id}`);
  return found;
};

describe("the cutting force", () => {
  const board = wood("particleboard");

  it("is 32 N/mm² in particleboard of 680 kg/m³ (Materials 14:2208, 2021; its density from memory)", () => {
    const heavier = { ...board, densityKgPerM3: { ...board.densityKgPerM3, value: 1360 } };
    expect(specificCuttingForceNPerMm2(heavier, 0.1, "long")).toBeCloseTo(64, 9);
  });

  it("rises as the chip thins: 2^0.4 = 1.319508 at half the chip (exponent ours)", () => {
    expect(specificCuttingForceNPerMm2(board, 0.05, "long")).toBeCloseTo(32 * 1.319_507_9, 5);
  });

  it("is half as much again in end grain (ours)", () => {
    const cherry = wood("black-cherry");
    const long = specificCuttingForceNPerMm2(cherry, 0.1, "long");
    expect(specificCuttingForceNPerMm2(cherry, 0.1, "end") / long).toBeCloseTo(1.5, 12);
  });

  it("is judged at twice the model's (ours)", () => {
    expect(FORCE_BAND_FACTOR).toBe(2);
  });
});

describe("the chip", () => {
  it("is as thick as the feed from half immersion on (references §4)", () => {
    expect(chipOf(1, 0.502).greatestMm).toBe(1);
    expect(chipThinningFactor(0.502)).toBe(1);
    expect(chipOf(1, 0.25).greatestMm).toBeCloseTo(0.866_025_4, 7);
  });
});

describe("the motor", () => {
  it("of 1000 W at 24 000 rpm gives 0.6·1000/(2π·400) = 0.238 732 N·m", () => {
    expect(motorTorqueNm({ inputPowerW: 1000, maxRpm: 24_000 }, DEFAULT_POLICY)).toBeCloseTo(0.238_732_4, 7);
  });
});

describe("a pass too heavy at the usual feed", () => {
  it("is slowed until the load is exactly what may be borne, not less", () => {
    const form = { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 30 } as const;
    const bit: Bit = { form, shankDiameterMm: 12.7, wings: 2 };
    const solid = bitSolid(bit);
    const edges = [{ lengthMm: 500, grain: "long" as const }];
    const setup = cutSetup(bit, solid.outline, { kind: "groove", edges, depthMm: 30 });
    const { load, uses } = loadedPass(
      {
        bit,
        solid,
        router: { minRpm: 10_000, maxRpm: 22_000, inputPowerW: 1800 },
        mounting: "table",
        wood: wood("black-cherry"),
        grain: "end",
        setup,
        policy: DEFAULT_POLICY,
      },
      passBetween(solid.outline, setup, setup.travelMm, 0),
    );
    const borne = ["tooth-force", "motor-torque", "shank-stress"];
    const loads = uses.filter(({ name }) => borne.includes(name)).map(({ ratio }) => ratio);
    expect(load.feedPerToothMm).toBeLessThan(DEFAULT_POLICY.feedPerToothMm);
    expect(Math.max(...loads)).toBeCloseTo(1, 6);
  });
});

describe("a hand", () => {
  it("takes 15 s along 600 mm at 2.4 m/min", () => {
    expect(secondsAlong(600, 2.4)).toBeCloseTo(15, 12);
  });
});
