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

type SetupOfBit = Pick<JobSetup, "id" | "bitId" | "runs">;
type EdgePolicy = Pick<Policy, "edgeLifeDueRatio">;

/**
 * What a job takes of each edge, its set-ups in this order: metres cut times how abrasive the wood is, against what the edge is taken to
 * last. Judgement, nothing measured: an edge that burns, pulls or leaves a rough face is dull whatever this says.
 * @example
 * const runs = [{ cut: 0, pass: 1, pieces: 60, fenceMm: 0, metresPerPiece: 1, secondsPerPiece: 20 }];
 * const before = { bitId: "bit", toothMaterial: "carbide-tipped", usedEquivalentM: 700, expectedM: 800 };
 * const [edge] = edgesOverJob([{ id: "first", bitId: "bit", runs }], [{ wood: woodById("mdf") }], [before], DEFAULT_POLICY);
 * edge.dullAt // → { setupId: "first", cut: 0, afterPieces: 39 }
 */
export function edgesOverJob(
  setups: readonly SetupOfBit[],
  cuts: readonly Pick<PlannedCut, "wood">[],
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

function runsWith(setups: readonly SetupOfBit[], bitId: string) {
  return setups
    .filter((setup) => setup.bitId === bitId)
    .flatMap(({ id, runs }) => runs.map((run) => ({ setupId: id, ...run })));
}
