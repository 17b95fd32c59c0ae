import { DEFAULT_POLICY, type PlanInput, woodById } from "@rimwise/domain";

/** What the benchmarks plan: a large panel in four passes, and a small round-over by hand. */
export const PLAN_INPUTS: Readonly<Record<string, PlanInput>> = {
  "large panel, table": {
    bit: {
      form: {
        kind: "panel-raising",
        diameterMm: 88.9,
        pilotDiameterMm: 12.7,
        profileHeightMm: 11,
        face: "cove",
        tongueWidthMm: 9,
      },
      shankDiameterMm: 12.7,
      wings: 2,
      massG: 340,
    },
    router: {
      minRpm: 9000,
      maxRpm: 22000,
      dial: {
        marks: { first: 1, last: 5 },
        steps: 2,
        readings: [
          { mark: 2, rpm: 11650 },
          { mark: 3, rpm: 15300 },
        ],
      },
      inputPowerW: 2200,
      colletDiametersMm: [6.35, 12.7],
    },
    mounting: "table",
    wood: wood("black-cherry"),
    cut: {
      kind: "panel",
      thicknessMm: 19,
      edges: [
        { lengthMm: 310, grain: "end" },
        { lengthMm: 460, grain: "long" },
        { lengthMm: 310, grain: "end" },
        { lengthMm: 460, grain: "long" },
      ],
    },
    policy: DEFAULT_POLICY,
  },
  "small round-over, handheld": {
    bit: { form: { kind: "round-over", diameterMm: 22.2, radiusMm: 4.76 }, shankDiameterMm: 6.35, wings: 2 },
    router: {
      minRpm: 12000,
      maxRpm: 30000,
      dial: { marks: { first: 1, last: 6 }, steps: 0 },
      inputPowerW: 700,
    },
    mounting: "handheld",
    wood: wood("black-walnut"),
    cut: { kind: "edge", thicknessMm: 22, edges: [{ lengthMm: 900, grain: "long" }] },
    policy: DEFAULT_POLICY,
  },
};

function wood(id: string) {
  const found = woodById(id);
  if (found === undefined) throw new Error(`no wood ${id}`);
  return found;
}
