import type { ProfilePoint } from "../bit/profile.ts";
import { DomainError } from "../quantity/fault.ts";
import { SAME_HEIGHT_MM } from "./curve.ts";
import { linePiece, type Piece } from "./piece.ts";
import { deepestMm, STANDING_HEIGHT_MM, type WantedProfile, type WantedWall } from "./wanted.ts";
import { pathFaults, refuse, TYPED_SLACK_MM, type WantedPath } from "./wanted-path.ts";
import { leavingFaults, type Stretch, stretchesOf } from "./wanted-stretch.ts";

/** A corner as one way of presenting the work shows it. */
type Seen = { readonly heightMm: number; readonly depthMm: number };

/**
 * The wanted profile of a wall given corner by corner, as every way of presenting the work shows it. Throws a DomainError that
 * names the field for what lies off the stock, an arc that does not reach, a wall that doubles back whichever way the work is
 * presented, and one that removes nothing.
 * @example
 * const segments = [{ kind: "arc", xMm: 0, zMm: 6, arcRadiusMm: 6, curve: "round" }];
 * const wanted = wantedFrom({ thicknessMm: 19, start: { xMm: 6, zMm: 0 }, segments });
 * wanted.walls.map(({ work, face }) => `${work} ${face}`) // → ["flat front", "standing front"]
 */
export function wantedFrom(path: WantedPath): WantedProfile {
  refuse(pathFaults(path));
  const { thicknessMm } = path;
  const stretches = stretchesOf(path);
  refuse(leavingFaults(stretches, thicknessMm));
  const walls = [
    flatWall(stretches, thicknessMm),
    standingWall(stretches, thicknessMm, "front"),
    standingWall(stretches, thicknessMm, "back"),
  ].filter((wall) => wall !== undefined);
  const [first] = walls;
  if (first === undefined) throw doublesBack(stretches);
  if (deepestMm(first.pieces) <= TYPED_SLACK_MM) {
    throw new DomainError([{ pointer: "/segments", code: "profile-removes-nothing", values: {} }]);
  }
  return { thicknessMm, walls };
}

function flatWall(stretches: readonly Stretch[], thicknessMm: number): WantedWall | undefined {
  const pieces = piecesSeen(stretches, ({ xMm, zMm }) => ({ heightMm: zMm, depthMm: xMm }), thicknessMm);
  return pieces && { work: "flat", face: "front", pieces };
}

/** Standing, the work needs some of its edge to stand on, and the waste lies between the wall and the face at the fence. */
function standingWall(
  stretches: readonly Stretch[],
  thicknessMm: number,
  face: "front" | "back",
): WantedWall | undefined {
  const seen = ({ xMm, zMm }: ProfilePoint) => ({
    heightMm: xMm,
    depthMm: face === "front" ? zMm : thicknessMm - zMm,
  });
  const upward = face === "back" ? stretches : [...stretches].reverse().map(turnedRound);
  const pieces = piecesSeen(upward, seen, STANDING_HEIGHT_MM);
  if (pieces === undefined || deepestMm(pieces) >= thicknessMm) return undefined;
  return { work: "standing", face, pieces };
}

function turnedRound(stretch: Stretch): Stretch {
  return { ...stretch, from: stretch.to, to: stretch.from };
}

/**
 * The pieces over the whole height of the work; undefined if the wall falls back anywhere, or starts or ends inside the work as
 * seen so.
 */
function piecesSeen(
  stretches: readonly Stretch[],
  seen: (point: ProfilePoint) => Seen,
  topMm: number,
): Piece[] | undefined {
  if (!stretches.every((stretch) => isRising(stretch, seen))) return undefined;
  const first = stretches[0];
  const last = stretches.at(-1);
  if (first === undefined || last === undefined) return undefined;
  const [start, end] = [seen(first.from), seen(last.to)];
  if ((start.heightMm > 0 && start.depthMm > 0) || (end.heightMm < topMm && end.depthMm > 0))
    return undefined;
  const pieces = stretches.flatMap((stretch) => pieceSeen(stretch, seen));
  return [
    ...(start.heightMm > SAME_HEIGHT_MM ? [linePiece(0, start.heightMm, 0)] : []),
    ...pieces,
    ...(topMm - end.heightMm > SAME_HEIGHT_MM ? [linePiece(end.heightMm, topMm, 0)] : []),
  ];
}

function pieceSeen({ from, to, arc }: Stretch, seen: (point: ProfilePoint) => Seen): Piece[] {
  const [start, end] = [seen(from), seen(to)];
  if (end.heightMm - start.heightMm <= SAME_HEIGHT_MM) return [];
  if (arc === undefined) return [linePiece(start.heightMm, end.heightMm, start.depthMm, end.depthMm)];
  const centre = seen(arc.centre);
  return [
    {
      kind: "arc",
      fromMm: start.heightMm,
      toMm: end.heightMm,
      centreMm: centre.heightMm,
      centreDepthMm: centre.depthMm,
      arcRadiusMm: arc.radiusMm,
      side: arc.isHollow ? 1 : -1,
    },
  ];
}

/**
 * Whether a stretch never falls: an arc must not reach past its ends in height, nor lie on both sides of its centre in depth.
 */
function isRising({ from, to, arc }: Stretch, seen: (point: ProfilePoint) => Seen): boolean {
  const [start, end] = [seen(from), seen(to)];
  if (end.heightMm < start.heightMm) return false;
  if (arc === undefined) return true;
  const centre = seen(arc.centre);
  const side = arc.isHollow ? 1 : -1;
  return [start, end].every(({ depthMm }) => side * (depthMm - centre.depthMm) >= -TYPED_SLACK_MM);
}

/** Named by the first stretch that falls back as seen with the work flat. */
function doublesBack(stretches: readonly Stretch[]): DomainError {
  const flat = ({ xMm, zMm }: ProfilePoint) => ({ heightMm: zMm, depthMm: xMm });
  const given = stretches.find((stretch) => !isRising(stretch, flat)) ?? stretches[0];
  const { xMm, zMm } = given?.from ?? { xMm: 0, zMm: 0 };
  return new DomainError([
    { pointer: `/segments/${given?.index ?? 0}`, code: "profile-doubles-back", values: { xMm, zMm } },
  ]);
}
