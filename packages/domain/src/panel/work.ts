import { formSummary } from "../bit/form/registry.ts";
import type { Work } from "../cut/work.ts";
import { makePlan } from "../plan/make-plan.ts";
import type { Plan, PlanInput } from "../plan/plan.ts";
import { panelPiece } from "./piece.ts";
import { isPlanned, type PanelSizing } from "./size-panels.ts";

/** The machine the edges are cut on; the wood and the cut follow from the sizing. */
export type PanelMachine = Omit<PlanInput, "cut">;

/** How long the edges of a job take. Walking, turning and looking between two edges is not in it. */
export type WorkTime = {
  /** Times a height or a fence is set. */
  readonly setUps: number;
  readonly cuttingSeconds: number;
  readonly settingUpSeconds: number;
  readonly totalSeconds: number;
};

/** The plan of all the edges of a job. */
export type PanelWork = {
  readonly input: PlanInput;
  readonly plan: Plan;
  /** Undefined if the plan must not be run. */
  readonly time: WorkTime | undefined;
};

/**
 * The plan of the edges of every panel that fits, all of them at one setting before the next, and the time it takes:
 * every pass along every edge, and each setting at the policy's time. Undefined if there is nothing to cut.
 * @example
 * const bit = {
 *   form: { kind: "panel-raising", diameterMm: 88.9, pilotDiameterMm: 22, profileHeightMm: 12, face: "cove", tongueWidthMm: 10 },
 *   shankDiameterMm: 12.7,
 *   wings: 2,
 *   massG: 340,
 * };
 * const wood = woodById("black-cherry");
 * const policy = DEFAULT_POLICY;
 * const air = { relativeHumidityPercent: 45, temperatureC: 21 };
 * const sizing = sizePanels({
 *   openings: [{ widthMm: 300, heightMm: 500 }],
 *   groove: { depthMm: 10, widthMm: 6.35 },
 *   thicknessMm: 16,
 *   wood,
 *   moisture: { percent: 8 },
 *   climate: { driest: air, wettest: air },
 *   bit,
 *   policy,
 * });
 * const router = { minRpm: 8000, maxRpm: 20_000, dial: { marks: { first: 1, last: 5 } }, inputPowerW: 1800 };
 * const work = planPanelWork(sizing, 16, { bit, router, mounting: "table", wood, policy });
 * work.input.cut // → { kind: "panel", edges: [{ grain: "end" }, { grain: "long" }], work: { thicknessMm: 16, count: 1, faceDown: "best" } }
 */
export function planPanelWork(
  { raising, edges, panels }: PanelSizing,
  thicknessMm: number,
  machine: PanelMachine,
): PanelWork | undefined {
  if (raising === undefined || edges.length === 0) return undefined;
  const cut = {
    kind: "panel" as const,
    edges: edges.map(({ lengthMm, grain }) => ({ lengthMm, grain })),
    thicknessMm,
    work: { ...panelPiece(panels.filter(isPlanned), thicknessMm, machine.wood), ...lyingFaceDown(machine) },
    ...raising,
  };
  const input = { ...machine, cut };
  const plan = makePlan(input);
  const counts = edges.map(({ count }) => count);
  return {
    input,
    plan,
    time: plan.verdict === "do-not-run" ? undefined : workTime(plan, counts, machine.policy.setUpSeconds),
  };
}

/** The bit raises the face that lies on the table; by hand it lies on the bench the other way up, and on edge neither lies. */
function lyingFaceDown({ bit, mounting }: PanelMachine): Pick<Work, "faceDown"> {
  if (formSummary(bit.form.kind).work === "standing") return {};
  return { faceDown: mounting === "table" ? "best" : "other" };
}

function workTime({ passes, steps }: Plan, counts: readonly number[], setUpSeconds: number): WorkTime {
  const setUps = steps.filter(({ code }) => code === "set-height" || code === "set-fence").length;
  let cuttingSeconds = 0;
  for (const { secondsPerEdge } of passes) {
    for (const [index, seconds] of secondsPerEdge.entries()) cuttingSeconds += seconds * (counts[index] ?? 0);
  }
  const settingUpSeconds = setUps * setUpSeconds;
  return { setUps, cuttingSeconds, settingUpSeconds, totalSeconds: cuttingSeconds + settingUpSeconds };
}
