import {
  type Bit,
  believableRpm,
  bitSolid,
  type Cut,
  DEFAULT_POLICY,
  type Form,
  type PastUse,
  type PlanInput,
  type Router,
  type SpeedTrial,
  strictestPolicy,
  WOODS,
} from "@rimwise/domain";
import fc from "fast-check";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const optional = <Name extends string>(name: Name, value: fc.Arbitrary<number>) =>
  fc
    .option(value, { nil: undefined })
    .map((given): { [Key in Name]?: number } => (given === undefined ? {} : fromName(name, given)));

function fromName<Name extends string>(name: Name, value: number): { [Key in Name]?: number } {
  const record: { [Key in Name]?: number } = {};
  record[name] = value;
  return record;
}

const straight = fc
  .tuple(number(2, 80), number(4, 100))
  .map(([diameterMm, cuttingLengthMm]): Form => ({ kind: "straight", diameterMm, cuttingLengthMm }));
const rabbet = fc.tuple(number(5, 40), number(1, 20), number(2, 40)).map(
  ([pilotDiameterMm, widthMm, cuttingLengthMm]): Form => ({
    kind: "rabbet",
    diameterMm: pilotDiameterMm + 2 * widthMm,
    pilotDiameterMm,
    cuttingLengthMm,
  }),
);
const chamfer = fc.tuple(number(5, 30), number(1, 25), number(15, 75)).map(
  ([pilotDiameterMm, widthMm, angleDeg]): Form => ({
    kind: "chamfer",
    diameterMm: pilotDiameterMm + 2 * widthMm,
    pilotDiameterMm,
    angleDeg,
  }),
);
const quarterRound = fc
  .tuple(fc.constantFrom("round-over" as const, "cove" as const), number(5, 25), number(1, 25))
  .map(
    ([kind, pilotDiameterMm, radiusMm]): Form => ({
      kind,
      diameterMm: pilotDiameterMm + 2 * radiusMm,
      radiusMm,
    }),
  );
const coreBox = fc.tuple(number(4, 50), number(0, 40)).map(
  ([diameterMm, extraMm]): Form => ({
    kind: "core-box",
    diameterMm,
    cuttingLengthMm: diameterMm / 2 + extraMm,
  }),
);
const panelRaising = fc
  .tuple(
    number(12, 20),
    number(15, 39),
    number(2, 14),
    number(0.5, 10),
    fc.constantFrom("bevel" as const, "cove" as const, "ogee" as const),
  )
  .map(
    ([pilotDiameterMm, faceMm, profileHeightMm, tongueWidthMm, face]): Form => ({
      kind: "panel-raising",
      diameterMm: pilotDiameterMm + 2 * (faceMm + tongueWidthMm),
      pilotDiameterMm,
      profileHeightMm,
      tongueWidthMm,
      face,
    }),
  );

/** Forms whose usual cut is known below. Every kind there is comes from `form-arbitraries.ts`. */
const forms = fc.oneof(straight, rabbet, chamfer, quarterRound, coreBox, panelRaising);

/** Any valid bit. */
export const bits: fc.Arbitrary<Bit> = fc
  .record({
    form: forms,
    shankDiameterMm: fc.constantFrom(6, 6.35, 8, 12, 12.7),
    wings: fc.integer({ min: 1, max: 4 }),
    extra: fc.tuple(optional("massRatio", number(0.61, 2.99)), optional("markedMaxRpm", number(6000, 30000))),
  })
  .map(({ extra: [{ massRatio }, marked], ...bit }) => ({
    ...bit,
    ...(massRatio !== undefined && { massG: Math.min(3000, massRatio * bitSolid(bit).estimatedMassG) }),
    ...marked,
  }));

/** Any valid router: one speed, a range, or a dial with readings; detents or stepless. */
export const routers: fc.Arbitrary<Router> = fc
  .record({
    minRpm: number(5000, 20000),
    spanRpm: number(0, 20000),
    hasDial: fc.boolean(),
    first: fc.integer({ min: 0, max: 2 }),
    marks: fc.integer({ min: 1, max: 9 }),
    steps: fc.integer({ min: 0, max: 4 }),
    readings: fc.uniqueArray(fc.integer({ min: 0, max: 9 }), { maxLength: 5 }),
    stretch: number(0.5, 1.4),
  })
  .map(({ minRpm, spanRpm, hasDial, first, marks, steps, readings, stretch }) => {
    const maxRpm = minRpm + spanRpm;
    if (!hasDial) return { minRpm, maxRpm };
    const last = first + marks;
    const { min, max } = believableRpm({ minRpm, maxRpm });
    const read = readings
      .filter((place) => place <= marks)
      .sort((a, b) => a - b)
      .map((place) => ({
        mark: first + place,
        rpm: (minRpm + 100 * place + (spanRpm * place) / marks) * stretch,
      }))
      .map((reading) => ({ ...reading, isConfirmed: reading.rpm < min || reading.rpm > max }));
    return { minRpm, maxRpm, dial: { marks: { first, last }, steps, readings: read } };
  });

const edges = fc.array(
  fc.record({ lengthMm: number(20, 2500), grain: fc.constantFrom("end" as const, "long" as const) }),
  { minLength: 1, maxLength: 4 },
);

/** A cut the bit can make: the form decides which kinds there are. */
export function cutsFor({ form }: Bit): fc.Arbitrary<Cut> {
  switch (form.kind) {
    case "straight":
    case "core-box":
      return fc.record({ edges, share: number(0.1, 1) }).map(({ edges: list, share }) => ({
        kind: "groove" as const,
        edges: list,
        depthMm: Math.max(0.2, share * Math.min(form.cuttingLengthMm, 100)),
      }));
    case "rabbet":
      return fc.record({ edges, share: number(0.2, 1) }).map(({ edges: list, share }) => ({
        kind: "rabbet" as const,
        edges: list,
        depthMm: Math.max(0.2, share * form.cuttingLengthMm),
      }));
    case "panel-raising":
      return fc
        .record({ edges, thicknessMm: number(16, 40) })
        .map((cut) => ({ kind: "panel" as const, ...cut }));
    default:
      return fc
        .record({ edges, thicknessMm: number(6, 60) })
        .map((cut) => ({ kind: "edge" as const, ...cut }));
  }
}

/** Any policy a shop may come to. */
export const policies = fc
  .tuple(
    optional("rimSpeedMaxMPerS", number(20, 60)),
    optional("speedMaxRpm", number(8000, 27000)),
    optional("dialRangeToleranceRatio", number(0, 0.3)),
  )
  .map((layers) => strictestPolicy(...layers));

/** Any input a plan can be made from. */
export const planInputs: fc.Arbitrary<PlanInput> = bits.chain((bit) =>
  fc.record({
    bit: fc.constant(bit),
    router: routers,
    mounting: fc.constantFrom("table" as const, "handheld" as const),
    wood: fc.constantFrom(...WOODS),
    cut: cutsFor(bit),
    policy: fc.oneof(fc.constant(DEFAULT_POLICY), policies),
  }),
);

/** What a bit did at some speed, somewhere. */
export const speedTrials: fc.Arbitrary<SpeedTrial> = fc.record({
  rpm: number(5000, 30000),
  outcome: fc.constantFrom("ran-free" as const, "shook" as const),
  isSameRouter: fc.boolean(),
});

/** How an earlier cut came out. */
export const pastUses: fc.Arbitrary<PastUse> = fc.record({
  outcome: fc.constantFrom("fine", "scorched", "chattered", "tore-out", "came-loose"),
  isSameRouter: fc.boolean(),
  sameWood: fc.boolean(),
});
