import { type PanelDimension, type PanelSizing, type PanelsInput, sizePanels, WOODS } from "@rimwise/domain";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { MOVEMENT_RANGES, movementMm } from "../../packages/domain/src/wood/movement.ts";
import { panelJobs } from "./panel-jobs.ts";

const RUNS = { numRuns: 500 };
/** Rounding in a length, mm. */
const SLACK_MM = 1e-7;

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const ratio = between(0, 1);

describe("what holds for every panel", () => {
  it("none that is cut to the size advised reaches the bottom of its groove, whatever the board and the day", () => {
    fc.assert(
      fc.property(panelJobs, ratio, ratio, (input, start, end) => {
        forEachSide(input, (dimension) => {
          const sizeMm = dimension.cutMm + trueMovementMm(input, dimension, start, end);
          const roomMm = dimension.openingMm + 2 * input.groove.depthMm - sizeMm;
          expect(roomMm / 2).toBeGreaterThanOrEqual(input.policy.panelClearanceMinMm - SLACK_MM);
        });
      }),
      RUNS,
    );
  });

  it("none that is said to fit shows a gap, whatever the board and the day", () => {
    fc.assert(
      fc.property(panelJobs, ratio, ratio, (input, start, end) => {
        const found = sizePanels(input);
        forEachSide(
          input,
          (dimension) => {
            const sizeMm = dimension.cutMm + trueMovementMm(input, dimension, start, end);
            expect((sizeMm - dimension.openingMm) / 2).toBeGreaterThan(-SLACK_MM);
          },
          found.panels.filter(({ verdict }) => verdict !== "does-not-fit"),
        );
      }),
      RUNS,
    );
  });

  it("the expected gap lies between the least and the greatest", () => {
    fc.assert(
      fc.property(panelJobs, (input) => {
        forEachSide(input, ({ now, driest, wettest, gapLeastMm, engagementLeastMm }) => {
          for (const { gapMm, engagementMm } of [now, driest, wettest]) {
            expect(gapMm).toBeGreaterThanOrEqual(gapLeastMm - SLACK_MM);
            expect(engagementMm).toBeGreaterThanOrEqual(engagementLeastMm - SLACK_MM);
          }
        });
      }),
      RUNS,
    );
  });

  it("every number is finite", () => {
    fc.assert(
      fc.property(panelJobs, (input) => {
        expect(numbersIn(sizePanels(input)).filter((value) => !Number.isFinite(value))).toEqual([]);
      }),
      RUNS,
    );
  });

  it("the same input gives the same panels, to the byte", () => {
    fc.assert(
      fc.property(panelJobs, (input) => {
        expect(JSON.stringify(sizePanels(structuredClone(input)))).toBe(JSON.stringify(sizePanels(input)));
      }),
      { numRuns: 100 },
    );
  });

  it("a tongue said to fit is never thicker than its groove, and goes in as far as it must", () => {
    fc.assert(
      fc.property(panelJobs, (input) => {
        for (const { tongue, width, height } of sizePanels(input).panels) {
          if (tongue.fit !== "fits" && tongue.fit !== "rattles") continue;
          expect(tongue.playLeastMm).toBeGreaterThanOrEqual(input.policy.tonguePlayMinMm - SLACK_MM);
          const deepestMm = Math.max(width.engagementMostMm, height.engagementMostMm);
          // A tongue cut narrower than the groove is deep ends at its field.
          if (tongue.fieldEdgeMm === undefined || tongue.fieldEdgeMm > deepestMm) {
            expect(tongue.lengthMm).toBeGreaterThanOrEqual(
              Math.min(deepestMm, input.groove.depthMm) - SLACK_MM,
            );
          }
        }
      }),
      RUNS,
    );
  });
});

describe("what more of something does", () => {
  it("a wider climate never gets a larger panel", () => {
    fc.assert(
      fc.property(panelJobs, between(0, 20), between(0, 20), (input, drier, wetter) => {
        const { driest, wettest } = input.climate;
        const wider = {
          driest: {
            ...driest,
            relativeHumidityPercent: Math.max(0, driest.relativeHumidityPercent - drier),
          },
          wettest: {
            ...wettest,
            relativeHumidityPercent: Math.min(100, wettest.relativeHumidityPercent + wetter),
          },
        };
        const [found, other] = [sizePanels({ ...input, climate: wider }), sizePanels(input)];
        // Cold air of the same humidity leaves wood wetter: if the two ends are near, the dry one may be the wetter.
        fc.pre(found.year.driestPercent <= other.year.driestPercent);
        fc.pre(found.year.wettestPercent >= other.year.wettestPercent);
        expectNoLarger(found, other);
      }),
      RUNS,
    );
  });

  it("wood whose moisture is less sure never gets a larger panel", () => {
    fc.assert(
      fc.property(panelJobs, between(0, 5), between(0, 5), (input, tolerancePercent, more) => {
        const { percent } = input.moisture;
        const sure = sizePanels({ ...input, moisture: { percent, tolerancePercent } });
        const unsure = sizePanels({
          ...input,
          moisture: { percent, tolerancePercent: tolerancePercent + more },
        });
        expectNoLarger(unsure, sure);
      }),
      RUNS,
    );
  });

  it("a deeper groove never makes a panel that fits one that does not", () => {
    fc.assert(
      fc.property(panelJobs, between(0, 15), ({ bit: _, ...input }, more) => {
        const { depthMm, widthMm } = input.groove;
        const deeper = sizePanels({ ...input, groove: { depthMm: depthMm + more, widthMm } });
        for (const [index, { verdict }] of sizePanels(input).panels.entries()) {
          // The panel grows with the groove, and moves in proportion: less than the groove gains.
          if (verdict !== "does-not-fit") expect(deeper.panels[index]?.verdict).not.toBe("does-not-fit");
        }
      }),
      RUNS,
    );
  });

  it("a flatsawn panel is never larger than a quartersawn one of the same wood", () => {
    const species = WOODS.filter(({ kind }) => kind === "species");
    fc.assert(
      fc.property(panelJobs, fc.constantFrom(...species), (input, wood) => {
        const sized = (sawn: "flat" | "quarter") => sizePanels({ ...input, wood, sawn });
        expectNoLarger(sized("flat"), sized("quarter"));
      }),
      { numRuns: 300 },
    );
  });
});

function forEachSide(
  input: PanelsInput,
  check: (dimension: PanelDimension) => void,
  panels = sizePanels(input).panels,
): void {
  for (const { width, height } of panels) {
    check(width);
    check(height);
  }
}

/** How a board moves that was somewhere within the tolerance and is somewhere within the year, by the handbook's equations alone. */
function trueMovementMm(input: PanelsInput, dimension: PanelDimension, start: number, end: number): number {
  const { wood, sawn = "flat", moisture, policy } = input;
  const { driestPercent, wettestPercent } = sizePanels(input).year;
  const { percent, tolerancePercent = policy.moistureToleranceAssumedPercent } = moisture;
  const from = clamped(percent + (2 * start - 1) * tolerancePercent);
  const to = driestPercent + end * (wettestPercent - driestPercent);
  if (wood.kind !== "species") return 0;
  if (dimension.moves === "along-grain") return (dimension.cutMm * 0.002 * (to - from)) / 30;
  return movementMm(wood, sawn === "flat" ? "tangential" : "radial", {
    sizeMm: dimension.cutMm,
    fromMoisturePercent: from,
    toMoisturePercent: to,
  });
}

function expectNoLarger(found: PanelSizing, other: PanelSizing): void {
  for (const [index, panel] of found.panels.entries()) {
    expect(panel.width.cutMm).toBeLessThanOrEqual(other.panels[index]?.width.cutMm ?? 0);
    expect(panel.height.cutMm).toBeLessThanOrEqual(other.panels[index]?.height.cutMm ?? 0);
  }
}

function clamped(percent: number): number {
  const { min, max } = MOVEMENT_RANGES.moisturePercent;
  return Math.min(max, Math.max(min, percent));
}

function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}
