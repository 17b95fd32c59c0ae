import {
  type Cut,
  type CutKind,
  DEFAULT_POLICY,
  DomainError,
  FORMS,
  GUIDE_NAMES,
  makePlan,
  type Plan,
  type PlanInput,
  WOODS,
} from "@rimwise/domain";
import { type Random, randomFrom } from "../fuzz/random.ts";
import { EXAMPLE_FORMS } from "../reference/example-forms.ts";

const ROUTER = {
  minRpm: 8000,
  maxRpm: 24_000,
  dial: { marks: { first: 1, last: 6 }, steps: 2 },
  inputPowerW: 2200,
};

export type Planned = { readonly input: PlanInput; readonly plan: Plan };

/** So many plans of cuts that somebody might ask for, the same for the same seed; requests that are refused as faulty are left out. */
export function* randomPlans(seed: number, count: number): Generator<Planned> {
  const random = randomFrom(seed);
  for (let found = 0; found < count; ) {
    const input = randomInput(random);
    const plan = planned(input);
    if (plan === undefined) continue;
    found += 1;
    yield { input, plan };
  }
}

/** The plan of a request; undefined if it is refused as faulty. */
export function planned(input: PlanInput): Plan | undefined {
  try {
    return makePlan(input);
  } catch (error) {
    if (error instanceof DomainError) return undefined;
    throw error;
  }
}

function randomInput(random: Random): PlanInput {
  const form = random.of(EXAMPLE_FORMS);
  const suits = FORMS.find(({ kind }) => kind === form.kind)?.suits ?? [];
  return {
    bit: {
      form,
      shankDiameterMm: 12.7,
      wings: 2,
      ...(random.percent(30) ? { isEndCutting: random.percent(50) } : {}),
    },
    router: ROUTER,
    mounting: random.percent(60) ? "table" : "handheld",
    wood: random.of(WOODS),
    cut: randomCut(random, random.of(suits)),
    policy: DEFAULT_POLICY,
  };
}

function randomCut(random: Random, kind: CutKind): Cut {
  const lengthMm = random.of([60, 120, 300, 600, 1200]);
  const grain = random.of(["long", "end", "across"] as const);
  const every = {
    edges: [{ lengthMm, grain }],
    ...(random.percent(15) ? { guide: random.of(GUIDE_NAMES) } : {}),
    ...(random.percent(10) ? { feedDirection: "with-rotation" as const } : {}),
    ...(random.percent(60) ? { work: randomWork(random, lengthMm, grain) } : {}),
  };
  const along = {
    ...(random.percent(20) ? { isCurved: true } : {}),
    ...(random.percent(15) ? { side: "inside" as const } : {}),
  };
  const depthMm = random.of([2, 5, 9, 12]);
  switch (kind) {
    case "edge":
      return {
        kind,
        ...every,
        ...along,
        ...(random.percent(20) ? { heightMm: depthMm } : {}),
        ...(random.percent(15) ? { bushingDiameterMm: random.of([16, 25, 40]) } : {}),
      };
    case "panel":
    case "joint":
      return { kind, ...every, ...along, ...(random.percent(20) ? { heightMm: depthMm } : {}) };
    case "rabbet":
      return {
        kind,
        ...every,
        ...along,
        depthMm,
        ...(random.percent(50) ? { widthMm: random.of([5, 10, 25]) } : {}),
      };
    case "groove":
      return {
        kind,
        ...every,
        depthMm,
        ...(random.percent(30) ? { isStopped: true } : {}),
        ...(random.percent(20) ? { widthMm: random.of([13, 20, 30]) } : {}),
        ...(random.percent(15) ? { bushingDiameterMm: random.of([16, 25]) } : {}),
      };
    case "inlay":
      return {
        kind,
        ...every,
        depthMm,
        part: random.of(["recess", "plug"] as const),
        bushingDiameterMm: random.of([16, 25, 50]),
      };
    case "trim":
      return { kind, ...every, ...along, overhangMm: random.of([1, 2, 3]) };
    case "surface":
      return { kind, ...every, depthMm: random.of([0.5, 1.5, 3]), widthMm: 200 };
  }
}

function randomWork(random: Random, edgeMm: number, grain: "long" | "end" | "across") {
  const otherMm = random.of([20, 57, 90, 300]);
  const [lengthMm, widthMm] = grain === "long" ? [edgeMm, otherMm] : [Math.max(edgeMm, 300), edgeMm];
  return {
    lengthMm,
    widthMm,
    count: random.of([1, 4]),
    ...(random.percent(30) ? { faceDown: "best" as const } : {}),
  };
}
