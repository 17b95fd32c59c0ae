import { DomainError } from "../quantity/fault.ts";
import { eroded } from "./eroded.ts";
import { type Curve, depthAtMm, type Piece } from "./piece.ts";
import { deepestMm, type Presentation, type WantedProfile, type WantedWall } from "./wanted.ts";

/** A height that a bound is taken at, and the depth there. */
export type Probe = { readonly zMm: number; readonly depthMm: number };

/** A wall to be made within a tolerance. */
export type Target = {
  readonly wall: WantedWall;
  /** The depth that may not be passed, at every height of the work. */
  readonly limit: Curve;
  /** The depth that must be reached, at the heights at which something must go. */
  readonly need: Curve;
  readonly topMm: number;
  readonly limitProbes: readonly Probe[];
  readonly needProbes: readonly Probe[];
  readonly presentations: readonly Presentation[];
};

/** Shares of a piece at which bounds are taken: near its ends, where corners are, and between. */
const PROBED_SHARES = [0.001, 0.5, 0.999] as const;

/** Beside the cut a bound is taken so far from it, mm: there most bits would gouge. */
const BESIDE_CUT_MM = [0.05, 0.5, 2, 6];

/** The walls of a profile with what of them must go. Throws a DomainError if within the tolerance nothing must. */
export function targetsOf(wanted: WantedProfile, toleranceMm: number): Target[] {
  const targets = wanted.walls.map((wall) => targetOf(wall, eroded(wall.pieces, toleranceMm)));
  if (targets.some(({ need }) => need.length > 0)) return targets.filter(({ need }) => need.length > 0);
  const deepest = Math.min(...wanted.walls.map(({ pieces }) => deepestMm(pieces)));
  const values = { given: toleranceMm, below: deepest };
  throw new DomainError([{ pointer: "/toleranceMm", code: "out-of-range", values }]);
}

/** A target with only some of what must go. */
export function targetOf(wall: WantedWall, need: Curve): Target {
  const limit = wall.pieces;
  return {
    wall,
    limit,
    need,
    topMm: limit.at(-1)?.toMm ?? 0,
    limitProbes: limit.flatMap((piece) => (isUntouched(piece) ? besideProbes(piece) : probes(piece))),
    needProbes: need.flatMap(probes),
    presentations:
      wall.work === "flat"
        ? [
            { work: "flat", face: "front" },
            { work: "flat", face: "back" },
          ]
        : [{ work: wall.work, face: wall.face }],
  };
}

function probes(piece: Piece): Probe[] {
  return PROBED_SHARES.map((share) => {
    const zMm = piece.fromMm + share * (piece.toMm - piece.fromMm);
    return { zMm, depthMm: depthAtMm(piece, zMm) };
  });
}

function besideProbes({ fromMm, toMm }: Piece): Probe[] {
  return BESIDE_CUT_MM.flatMap((byMm) => [fromMm + byMm, toMm - byMm])
    .filter((zMm) => zMm > fromMm && zMm < toMm)
    .map((zMm) => ({ zMm, depthMm: 0 }));
}

function isUntouched(piece: Piece): boolean {
  return piece.kind === "line" && piece.startDepthMm === 0 && piece.endDepthMm === 0;
}
