import {
  type Bit,
  type Cut,
  DEFAULT_POLICY,
  describePrecaution,
  describeStep,
  type Mounting,
  makePlan,
  type Plan,
  type PlanInput,
  showIn,
  woodById,
} from "@rimwise/domain";

const cherry = woodById("black-cherry");
if (cherry === undefined) throw new Error("no cherry");

export const EDGES = [{ lengthMm: 600, grain: "long" }] as const;
export const bitOf = (form: Bit["form"]): Bit => ({ form, shankDiameterMm: 12.7, wings: 2 });
export const ROUND_OVER = (radiusMm: number) =>
  bitOf({ kind: "round-over", diameterMm: 12.7 + 2 * radiusMm, radiusMm, pilotDiameterMm: 12.7 });
export const STRAIGHT = bitOf({ kind: "straight", diameterMm: 19.05, cuttingLengthMm: 31.75 });
export const DOVETAIL = bitOf({ kind: "dovetail", diameterMm: 12.7, angleDeg: 14, cuttingLengthMm: 9 });
export const KEYHOLE = bitOf({
  ...{ kind: "keyhole", diameterMm: 9.5, headHeightMm: 4, neckDiameterMm: 4.8, cuttingLengthMm: 11 },
});

/** A plan in a strong router with a dial, in cherry. */
export function planOf(bit: Bit, cut: Cut, mounting: Mounting = "table") {
  return makePlan(inputOf(bit, cut, mounting));
}

/** What it is computed from. */
export function inputOf(bit: Bit, cut: Cut, mounting: Mounting = "table"): PlanInput {
  return {
    ...{ bit, cut, mounting, wood: cherry ?? never(), policy: DEFAULT_POLICY },
    router: {
      minRpm: 8000,
      maxRpm: 24_000,
      dial: { marks: { first: 1, last: 6 }, steps: 2 },
      inputPowerW: 2200,
    },
  };
}

function never(): never {
  throw new Error("unreachable");
}

/** Every sentence of the order of work and the precautions. */
export const said = (plan: Plan) => [
  ...plan.steps.map((step) => describeStep(step, showIn("metric"))),
  ...plan.precautions.map((precaution) => describePrecaution(precaution, showIn("metric"))),
];
export const codesOf = (plan: Plan) => plan.findings.map(({ code }) => code);
export const precautionsOf = (bit: Bit, cut: Cut, mounting: Mounting = "table") =>
  planOf(bit, cut, mounting).precautions.map(({ code }) => code);
export const spoken = (bit: Bit, cut: Cut, mounting: Mounting = "table") =>
  said(planOf(bit, cut, mounting)).join("\n");
