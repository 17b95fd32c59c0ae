import type { GuideName } from "../cut/guide-name.ts";
import { GUIDES } from "../guide/registry.ts";
import type { PlannedPass } from "../plan/planned-pass.ts";
import type { JobSetup, PlannedCut, SetupRun } from "./set-up.ts";

const MM_PER_M = 1000;

/** Heights and fences that differ by less are one setting, mm: no lift is set finer. Ours. */
const SAME_SETTING_MM = 0.01;

/** A set-up before it is known what comes before it. Those of one key are set alike. */
export type Draft = Omit<JobSetup, "after"> & { readonly key: string };

/** The set-up at which a pass of a cut would be made; undefined if it must not be run, or has been made. */
export function draftOf(cut: PlannedCut, index: number, planned: PlannedPass, id: string): Draft | undefined {
  const { bitId, routerId, mounting, plan } = cut;
  const { setting } = plan.speed;
  const { guide, testPiece, passes } = plan;
  if (setting === undefined || guide === undefined || isMade(cut, planned)) return undefined;
  const { number, kind, heightMm, cutterMm, fenceMm } = planned.pass;
  const isLast = number === passes.length;
  const place = {
    bitId,
    routerId,
    mounting,
    guide,
    heightMm,
    cutterMm,
    fenceMm: isSetToDistance(guide) ? fenceMm : undefined,
    positionMm: cut.positionMm,
    mark: setting.mark,
    rpm: setting.rpm,
  };
  return {
    ...place,
    id,
    key: keyOf(place),
    kind,
    runs: [runOf(cut, index, planned)],
    testPiece: isLast ? testPiece : undefined,
  };
}

/** Whether the wood of a pass is gone already: it was cut as high and with the fence as far back, or further. */
function isMade({ made = [] }: PlannedCut, { pass }: PlannedPass): boolean {
  return made.some(
    ({ heightMm, fenceMm }) =>
      heightMm > pass.heightMm - SAME_SETTING_MM && fenceMm < pass.fenceMm + SAME_SETTING_MM,
  );
}

function isSetToDistance(name: GuideName): boolean {
  return GUIDES.find((guide) => guide.name === name)?.isSet === true;
}

type Place = Pick<
  JobSetup,
  "bitId" | "routerId" | "mounting" | "guide" | "heightMm" | "fenceMm" | "positionMm" | "mark" | "rpm"
>;

function keyOf({
  bitId,
  routerId,
  mounting,
  guide,
  heightMm,
  fenceMm,
  positionMm,
  mark,
  rpm,
}: Place): string {
  const settings = [heightMm, fenceMm, positionMm].map((mm) =>
    mm === undefined ? "none" : Math.round(mm / SAME_SETTING_MM),
  );
  return [bitId, routerId, mounting, guide, ...settings, mark ?? "", rpm].join(" ");
}

function runOf({ cut, pieces }: PlannedCut, index: number, { pass, secondsPerEdge }: PlannedPass): SetupRun {
  const runsSideBySide = pass.runs ?? 1;
  const lengthMm = cut.edges.reduce((sum, edge) => sum + edge.lengthMm, 0);
  return {
    cut: index,
    pass: pass.number,
    pieces,
    fenceMm: pass.fenceMm,
    metresPerPiece: (lengthMm * runsSideBySide) / MM_PER_M,
    secondsPerPiece: secondsPerEdge.reduce((sum, seconds) => sum + seconds, 0),
  };
}
