import { expect, it } from "vitest";
import { DEFAULT_POLICY } from "../policy/policy.ts";
import { bitCeilings } from "./bit-ceiling.ts";

const PANEL = {
  form: { kind: "panel-raising", diameterMm: 88.9, pilotDiameterMm: 22, profileHeightMm: 12, face: "cove" },
  shankDiameterMm: 12.7,
  wings: 2,
  massG: 340,
} as const;

it("is what the trade's chart and 125 mph give a 3-1/2 in bit: 12 000 rpm (common practice)", () => {
  const { hard, guide } = bitCeilings(PANEL, DEFAULT_POLICY);
  expect(guide).toBe(12_000);
  // 56 m/s at 88.9 mm: 60 v / (pi d).
  expect(hard).toBeCloseTo(12_030.61, 2);
});

it("never goes over what is marked", () => {
  expect(bitCeilings({ ...PANEL, markedMaxRpm: 9000 }, DEFAULT_POLICY).hard).toBe(9000);
});
