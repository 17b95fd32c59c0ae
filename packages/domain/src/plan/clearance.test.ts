import { expect, it } from "vitest";
import { DEFAULT_POLICY, strictestPolicy } from "../policy/policy.ts";
import { clearanceOf } from "./clearance.ts";

const bit = (diameterMm: number, massG: number) => ({
  form: { kind: "straight" as const, diameterMm, cuttingLengthMm: 25 },
  shankDiameterMm: 12.7,
  wings: 2,
  massG,
});

it("a bit over 2-1/2 in is for the table only, a small and light one is not (common practice)", () => {
  expect(clearanceOf(bit(12.7, 58), DEFAULT_POLICY)).toBe("handheld");
  expect(clearanceOf(bit(63.6, 100), DEFAULT_POLICY)).toBe("table-only");
});

it("diameter alone does not clear a heavy bit, and a policy may tighten it", () => {
  expect(clearanceOf(bit(20, 171), DEFAULT_POLICY)).toBe("table-only");
  expect(clearanceOf(bit(12.7, 58), strictestPolicy({ handheldMassMaxG: 50 }))).toBe("handheld-with-care");
});
