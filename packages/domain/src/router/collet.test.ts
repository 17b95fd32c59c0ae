import { describe, expect, it } from "vitest";
import { hasColletFor, shankFaults } from "./collet.ts";
import type { Router } from "./router.ts";

const ROUTER: Router = { minRpm: 10_000, maxRpm: 24_000, colletDiametersMm: [12.7] };

describe("a collet", () => {
  it("closes on a shank a tenth of a millimetre off, not on 12 mm in 1/2 in", () => {
    expect(hasColletFor(12.6005, ROUTER)).toBe(true);
    expect(hasColletFor(12.5995, ROUTER)).toBe(false);
    expect(hasColletFor(12, ROUTER)).toBe(false);
  });

  it("takes nothing thicker by more than that", () => {
    expect(shankFaults(12.7995, ROUTER)).toEqual([]);
    expect(shankFaults(12.8005, ROUTER)).toMatchObject([{ code: "shank-too-thick" }]);
  });
});
