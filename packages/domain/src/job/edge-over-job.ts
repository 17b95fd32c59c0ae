import type { Policy } from "../policy/policy.ts";
import type { ToothMaterial } from "../wear/tooth-material.ts";
import { wearFactor } from "../wear/wear-factor.ts";
import type { JobSetup, PlannedCut } from "./set-up.ts";

/** What is left of a bit's edge before the job. */
export type EdgeBefore = {
  readonly bitId: string;
  readonly toothMaterial: ToothMaterial;
  /** Cut since the last sharpening, and what an edge is taken to last, as metres of solid wood of middling density. */
  readonly usedEquivalentM: number;
  readonly expectedM: number;
};

/** How many pieces of one run an edge still cuts well. */
export type EdgeEnd = { readonly setupId: string; readonly cut: number; readonly afterPieces: number };

/** What a job takes of one bit's edge. */
export type EdgeOverJob = {
  readonly bitId: string;
  readonly usedRatioBefore: number;
  readonly usedRatioAfter: number;
  /** Where it is due for sharpening by the policy, and where it is dull; undefined if it is neither in this job. */
  readonly dueAt: EdgeEnd | undefined;
  readonly dullAt: EdgeEnd | undefined;
};

type EdgePolicy = Pick<Policy, "edgeLifeDueRatio">;

/**
 * What a job takes of each edge, its set-ups in this order: metres cut times how abrasive the wood is, against what the edge is taken to
 * last. Judgement, nothing measured: an edge that burns, pulls or leaves a rough face is dull whatever this says.
 */
export function edgesOverJob(
  setups: readonly JobSetup[],
  cuts: readonly PlannedCut[],
  edges: readonly EdgeBefore[],
  { edgeLifeDueRatio }: EdgePolicy,
): EdgeOverJob[] {
  return edges.map((edge) => {
    const { bitId, usedEquivalentM, expectedM } = edge;
    const ends = { due: expectedM * edgeLifeDueRatio, dull: expectedM };
    let usedM = usedEquivalentM;
    let dueAt: EdgeEnd | undefined;
    let dullAt: EdgeEnd | undefined;
    for (const { setupId, cut, pieces, metresPerPiece } of runsWith(setups, bitId)) {
      const wood = cuts[cut]?.wood;
      const perPieceM =
        wood === undefined ? metresPerPiece : metresPerPiece * wearFactor(wood, edge.toothMaterial);
      const endAt = (lifeM: number): EdgeEnd | undefined =>
        usedM + pieces * perPieceM < lifeM
          ? undefined
          : { setupId, cut, afterPieces: Math.max(0, Math.ceil((lifeM - usedM) / perPieceM) - 1) };
      dueAt ??= endAt(ends.due);
      dullAt ??= endAt(ends.dull);
      usedM += pieces * perPieceM;
    }
    return {
      bitId,
      usedRatioBefore: usedEquivalentM / expectedM,
      usedRatioAfter: usedM / expectedM,
      dueAt,
      dullAt,
    };
  });
}

function runsWith(setups: readonly JobSetup[], bitId: string) {
  return setups
    .filter((setup) => setup.bitId === bitId)
    .flatMap(({ id, runs }) => runs.map((run) => ({ setupId: id, ...run })));
}
