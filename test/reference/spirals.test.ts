import { describeFinding, showIn } from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { bitOf, codesOf, EDGES, planOf } from "./set-up-plans.ts";

const GROOVE = { kind: "groove", depthMm: 8, edges: EDGES } as const;
const size = { diameterMm: 9.525, cuttingLengthMm: 25.4 };
const up = bitOf({ kind: "spiral-up-cut", ...size });
const down = bitOf({ kind: "spiral-down-cut", ...size });
const compression = (upCutLengthMm?: number) =>
  bitOf({ kind: "spiral-compression", ...size, ...(upCutLengthMm !== undefined && { upCutLengthMm }) });

// Which way a spiral lifts the fibres and the chips: common practice.
describe("a spiral bit", () => {
  it.each([
    ["table", /the face that lies on the table/],
    ["handheld", /the upper face, under the base/],
  ] as const)("that cuts up frays the face by the router: %s", (mounting, face) => {
    const plan = planOf(up, GROOVE, mounting);
    const found = plan.findings.find(({ code }) => code === "frays-near-face");
    expect(found && describeFinding(found, showIn("metric"))).toMatch(face);
    expect(codesOf(planOf(down, GROOVE, mounting))).not.toContain("frays-near-face");
  });

  it("that cuts down packs the chips of a groove, not of an edge", () => {
    expect(codesOf(planOf(down, GROOVE))).toContain("chips-packed");
    expect(codesOf(planOf(down, { kind: "rabbet", depthMm: 4, widthMm: 5, edges: EDGES }))).not.toContain(
      "chips-packed",
    );
  });

  it.each([
    ["table", /the upper face/],
    ["handheld", /the lower face/],
  ] as const)(
    "that cuts down frays the far face of a cut through the work, no other: %s",
    (mounting, face) => {
      const edge = { kind: "edge", thicknessMm: 19, fenceMm: 3, edges: EDGES } as const;
      const through = planOf(down, { ...edge, heightMm: 21 }, mounting);
      const found = through.findings.find(({ code }) => code === "frays-far-face");
      expect(found && describeFinding(found, showIn("metric"))).toMatch(face);
      const rabbet = { kind: "rabbet", depthMm: 4, widthMm: 5, edges: EDGES } as const;
      for (const cut of [GROOVE, rabbet, { ...edge, heightMm: 8 }]) {
        expect(codesOf(planOf(down, cut, mounting))).not.toContain("frays-far-face");
      }
      expect(codesOf(planOf(up, { ...edge, heightMm: 21 }, mounting))).not.toContain("frays-far-face");
    },
  );

  it("that compresses must go deeper than its up-cut tip at once", () => {
    expect(codesOf(planOf(compression(6), GROOVE))).toContain("compression-shallow");
    expect(codesOf(planOf(compression(2), GROOVE))).not.toContain("compression-shallow");
    expect(codesOf(planOf(compression(), GROOVE))).toContain("compression-unknown");
  });
});
