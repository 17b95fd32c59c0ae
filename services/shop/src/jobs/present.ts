import {
  ADVICE,
  type DayOrder,
  type EdgeOverJob,
  floorTo,
  type JobSetup,
  type JobTimes,
  type MinuteRange,
  type PlannedCut,
  roundTo,
  type Verdict,
} from "@rimwise/domain";
import { DECIMALS, dialMark, rpm } from "../plans/rounding.ts";
import type { ComputedCut, JobToCompute } from "./computed.ts";
import type { JobGrounds } from "./facts.ts";
import { type FoundOut, jobFindings, type RunAt } from "./findings.ts";
import { describeSetup, settingsOf } from "./sentences.ts";
import type {
  EdgeShown,
  JobBitShown,
  JobFinding,
  JobGround,
  JobPlannedCut,
  JobSetupShown,
  JobWork,
} from "./work-schema.ts";

/** A job as it was computed, in full precision. */
export type ComputedJob = Omit<FoundOut, "runOf"> & {
  readonly job: JobToCompute;
  readonly planned: readonly PlannedCut[];
  /** In the order of work. */
  readonly setups: readonly JobSetup[];
  readonly day: DayOrder;
  readonly times: JobTimes;
  readonly grounds: JobGrounds;
  readonly at: string;
  readonly engineVersion: string;
};

const MINUTE_DECIMALS = 1;
const SECONDS_PER_MIN = 60;

/** A job as it goes over the wire and is kept: rounded, each finding with its sentence. */
export function presentWork(computed: ComputedJob): JobWork {
  const { setups, day, times, edges, at, engineVersion, planned } = computed;
  const places = placesOf(computed.computed);
  const shown = setups.map((setup, index) => presentSetup(setup, index, computed, places));
  const runOf = (setupId: string, cut: number): RunAt | undefined => {
    const index = setups.findIndex(({ id }) => id === setupId);
    const pieces = planned[cut]?.pieces;
    const name = places[cut]?.name;
    return pieces === undefined || name === undefined ? undefined : { setup: index + 1, name, pieces };
  };
  const findings = jobFindings({ ...computed, runOf });
  return {
    verdict: verdictOf(findings),
    findings,
    cuts: computed.computed.map(presentCut),
    setups: shown,
    order: {
      changeoverMin: minutes(day.changeoverMin),
      lowerBoundMin: floorTo(day.lowerBoundMin, MINUTE_DECIMALS),
      gapPercent: gapPercent(day),
      isProvenLeast: day.isProvenLeast,
    },
    minutes: {
      cutting: presentRange(times.cutting),
      handling: presentRange(times.handling),
      changingOver: presentRange(times.changingOver),
      total: presentRange(times.total),
    },
    edges: edges.map((edge) => presentEdge(edge, computed)),
    bits: bitsToFetch(computed),
    grounds: groundsOf(computed),
    computedAt: at,
    engineVersion,
    advice: ADVICE,
  };
}

/** The cuts of the list that the planned ones stand for, in the planned ones' order. */
function placesOf(computed: readonly ComputedCut[]): ComputedCut[] {
  return computed.filter(({ own }) => own?.outcome.kind === "planned");
}

function presentCut({ part, cut, piece, choice, own, isWaste, digest }: ComputedCut): JobPlannedCut {
  const place = {
    part,
    cut,
    pieces: piece.pieces,
    ...(isWaste && { isWasteFor: cut }),
    notTaken: [...choice.notTaken],
  };
  if (own === undefined || own.outcome.kind === "refused") return { ...place, ...NOTHING_PLANNED };
  const { plan, request } = own.outcome;
  const { setting } = plan.speed;
  return {
    ...place,
    bitId: own.candidate.bit.record.id,
    routerId: own.machine.routerId,
    mounting: own.machine.mounting,
    verdict: plan.verdict,
    mark: setting?.mark === undefined ? null : dialMark(setting.mark),
    rpm: setting ? rpm(setting.rpm) : null,
    passes: plan.passes.length,
    guide: plan.guide ?? null,
    request,
    digest: digest ?? null,
  };
}

const NOTHING_PLANNED = {
  bitId: null,
  routerId: null,
  mounting: null,
  verdict: "do-not-run",
  mark: null,
  rpm: null,
  passes: 0,
  guide: null,
  request: null,
  digest: null,
} as const;

function presentSetup(
  setup: JobSetup,
  index: number,
  { day, bits, grounds, planned }: ComputedJob,
  places: readonly ComputedCut[],
): JobSetupShown {
  const { id, bitId, routerId, mounting, guide, kind, fenceMm, mark, testPiece, after, runs } = setup;
  const [firstRun] = runs;
  const first = firstRun && planned[firstRun.cut];
  const change = day.order.find(({ setupId }) => setupId === id);
  const shown = {
    id,
    number: index + 1,
    bitId,
    routerId,
    mounting,
    guide,
    kind,
    heightMm: roundTo(setup.heightMm, DECIMALS.mm),
    cutterMm: roundTo(setup.cutterMm, DECIMALS.mm),
    fenceMm: fenceMm === undefined ? null : roundTo(fenceMm, DECIMALS.mm),
    positionMm: setup.positionMm ?? null,
    mark: mark === undefined ? null : dialMark(mark),
    rpm: rpm(setup.rpm),
    ...(testPiece && {
      testPiece: {
        ...(testPiece.depthMm !== undefined && { depthMm: roundTo(testPiece.depthMm, DECIMALS.mm) }),
        ...(testPiece.widthMm !== undefined && { widthMm: roundTo(testPiece.widthMm, DECIMALS.mm) }),
      },
    }),
    after: after.map(({ setupId, rule }) => ({ setupId, rule })),
    runs: runs.flatMap((run) => {
      const place = places[run.cut];
      if (place === undefined) return [];
      return [
        {
          part: place.part,
          cut: place.cut,
          name: place.name,
          pass: run.pass,
          pieces: run.pieces,
          ...presentationOf(place),
          fenceMm: roundTo(run.fenceMm, DECIMALS.mm),
          metres: roundTo(run.pieces * run.metresPerPiece, DECIMALS.mm),
          secondsPerPiece: roundTo(run.secondsPerPiece, DECIMALS.s),
        },
      ];
    }),
    settings: firstRun && first ? settingsOf(first, firstRun) : [],
    changeMin: minutes(change?.changeMin ?? 0),
    cuttingMin: minutes(
      runs.reduce((sum, run) => sum + run.pieces * run.secondsPerPiece, 0) / SECONDS_PER_MIN,
    ),
    handlingMin: minutes(
      (runs.reduce((sum, run) => sum + run.pieces, 0) * grounds.policy.handlingSecondsPerPiece) /
        SECONDS_PER_MIN,
    ),
  };
  const router = grounds.machines.find((machine) => machine.routerId === routerId);
  const names = [bits.get(bitId)?.record.name ?? bitId, router?.known.record.name ?? routerId] as const;
  return { ...shown, text: describeSetup(shown, ...names) };
}

function presentationOf({ own }: ComputedCut) {
  return own !== undefined && "setting" in own.candidate ? own.candidate.setting.presentation : {};
}

function presentEdge(
  { bitId, usedRatioBefore, usedRatioAfter }: EdgeOverJob,
  { bits }: ComputedJob,
): EdgeShown {
  const usedPercentBefore = roundTo(usedRatioBefore * 100, DECIMALS.percent);
  const usedPercentAfter = roundTo(usedRatioAfter * 100, DECIMALS.percent);
  const name = bits.get(bitId)?.record.name ?? bitId;
  const text = `${name}: ${usedPercentBefore} % of its edge's life is used before the job and ${usedPercentAfter} % after it, by estimate.`;
  return { bitId, usedPercentBefore, usedPercentAfter, text };
}

/** The bits of the set-ups, in the order in which they are first needed. */
function bitsToFetch({ setups, bits }: ComputedJob): JobBitShown[] {
  return [...new Set(setups.map(({ bitId }) => bitId))].flatMap((bitId) => {
    const record = bits.get(bitId)?.record;
    if (record === undefined) return [];
    const { name, state, placeId = null, homePlaceId = null } = record;
    return [{ bitId, name, state, placeId, homePlaceId }];
  });
}

function groundsOf({ computed }: ComputedJob): JobGround[] {
  const grounds = computed.flatMap(({ ground }) => ground ?? []);
  const first = new Map<string, JobGround>();
  for (const ground of grounds) {
    const { bitId, routerId, mounting, woodId } = ground;
    const key = `${bitId} ${routerId} ${mounting} ${woodId}`;
    if (!first.has(key)) first.set(key, ground);
  }
  return [...first.values()];
}

function verdictOf(findings: readonly JobFinding[]): Verdict {
  if (findings.some(({ severity }) => severity === "refuse")) return "do-not-run";
  return findings.some(({ severity }) => severity === "care") ? "run-with-care" : "run";
}

function gapPercent({ changeoverMin, lowerBoundMin, isProvenLeast }: DayOrder): number {
  if (isProvenLeast || changeoverMin === 0) return 0;
  return Math.ceil((1000 * (changeoverMin - lowerBoundMin)) / changeoverMin) / 10;
}

function presentRange({ leastMin, usualMin, mostMin }: MinuteRange): MinuteRange {
  return {
    leastMin: floorTo(leastMin, MINUTE_DECIMALS),
    usualMin: minutes(usualMin),
    mostMin: Math.ceil(mostMin * 10) / 10,
  };
}

function minutes(value: number): number {
  return roundTo(value, MINUTE_DECIMALS);
}
