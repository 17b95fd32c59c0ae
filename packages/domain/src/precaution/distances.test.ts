import { describe, expect, it } from "vitest";
import type { Bit } from "../bit/bit.ts";
import { bitSolid } from "../bit/solid.ts";
import type { Cut } from "../cut/kind/registry.ts";
import { cutSetup } from "../cut/setup.ts";
import { woodById } from "../wood/registry.ts";
import type { PrecautionContext } from "./define.ts";
import { guardAndPushBlocks } from "./guard-and-push-blocks.ts";
import { seatInCollet } from "./seat-in-collet.ts";
import { smallWork } from "./small-work.ts";

const INCH = 25.4;

const context = ({ shankMm = 12.7, edgeMm = 600 }): PrecautionContext => {
  const bit: Bit = {
    form: { kind: "straight", diameterMm: 19.05, cuttingLengthMm: 25.4 },
    shankDiameterMm: shankMm,
    wings: 2,
  };
  const solid = bitSolid(bit);
  const cut: Cut = { kind: "groove", depthMm: 6, edges: [{ lengthMm: edgeMm, grain: "long" }] };
  const wood = woodById("black-cherry");
  if (wood === undefined) throw new Error("no cherry");
  return {
    bit,
    solid,
    setup: cutSetup(bit, solid.outline, cut),
    wood,
    router: { minRpm: 10_000, maxRpm: 22_000 },
    mounting: "table",
    isHeavy: false,
    cut,
    guide: "fence",
    direction: "work-right-to-left",
    hasTestPiece: false,
    guideSays: [],
  };
};

// Rules of schools and community workshops: common practice.
describe("the distances a teacher gives", () => {
  it("hands stay 4 in from the bit", () => {
    expect(guardAndPushBlocks.find(context({}))).toMatchObject({ handsAwayMm: 4 * INCH });
  });

  it("a shank goes in at least 1/2 in, and at least twice its own diameter", () => {
    expect(seatInCollet.find(context({ shankMm: 6 }))).toMatchObject({ insertionMm: INCH / 2 });
    expect(seatInCollet.find(context({ shankMm: 12.7 }))).toMatchObject({ insertionMm: INCH });
  });

  it("and is drawn back 1/8 in from the bottom", () => {
    expect(seatInCollet.find(context({}))).toMatchObject({ backOffMm: INCH / 8 });
  });

  it("work shorter than 12 in goes into a jig", () => {
    expect(smallWork.find(context({ edgeMm: 304.8 }))).toBeUndefined();
    expect(smallWork.find(context({ edgeMm: 304 }))).toMatchObject({ shortestMm: 304, leastMm: 304.8 });
  });
});
