import type { Piece, WantedPath, WantedSegment, WantedWall } from "@rimwise/domain";
import fc from "fast-check";
import type { MultiPolygon, Ring } from "polygon-clipping";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

/** Chords to an arc: the farthest of them is a few millionths of the radius off. */
const CHORDS = 400;

/** A wall that rises from the front face or the edge to the edge or the back face, by lines, steps and arcs. */
export const risingPaths: fc.Arbitrary<WantedPath> = fc
  .record({
    thicknessMm: number(12, 40),
    startsOnFace: fc.boolean(),
    endsOnFace: fc.boolean(),
    corners: fc.array(
      fc.record({
        shareOfRest: fc.oneof(fc.constant(0), number(0.1, 0.5)),
        xMm: number(0.5, 15),
        kind: fc.constantFrom("line" as const, "arc" as const),
        roundness: number(1.02, 4),
        curve: fc.constantFrom("hollow" as const, "round" as const),
      }),
      { minLength: 2, maxLength: 6 },
    ),
  })
  .map(({ thicknessMm, startsOnFace, endsOnFace, corners }) => {
    const start = startsOnFace ? { xMm: corners[0]?.xMm ?? 5, zMm: 0 } : { xMm: 0, zMm: thicknessMm / 8 };
    let at = start;
    const segments: WantedSegment[] = [];
    const go = (to: { xMm: number; zMm: number }, arc?: { roundness: number; curve: "hollow" | "round" }) => {
      const chordMm = Math.hypot(to.xMm - at.xMm, to.zMm - at.zMm);
      if (chordMm < 0.2) return;
      segments.push(
        arc === undefined
          ? { kind: "line", ...to }
          : { kind: "arc", ...to, arcRadiusMm: (chordMm / 2) * arc.roundness, curve: arc.curve },
      );
      at = to;
    };
    for (const corner of corners) {
      const zMm = at.zMm + corner.shareOfRest * (thicknessMm * 0.9 - at.zMm);
      go({ xMm: corner.xMm, zMm }, corner.kind === "arc" && corner.shareOfRest > 0 ? corner : undefined);
    }
    if (endsOnFace) go({ xMm: at.xMm, zMm: thicknessMm });
    else go({ xMm: 0, zMm: at.zMm });
    return { thicknessMm, start, segments };
  });

/** The waste between a path and the stock's surface, worked out here: each arc from the circle through its ends. */
export function wasteOfPath({ thicknessMm, start, segments }: WantedPath): MultiPolygon {
  const last = segments.at(-1) ?? start;
  const along = ({ xMm, zMm }: { xMm: number; zMm: number }) =>
    zMm < 0.02 ? -xMm : thicknessMm - zMm < 0.02 ? thicknessMm + xMm : zMm;
  // Going forward, the edge is on the left: so is the centre of a hollow.
  const forward = along(last) >= along(start) ? 1 : -1;
  const ring: Ring = [[start.xMm, start.zMm]];
  let at = start;
  for (const segment of segments) {
    if (segment.kind === "arc") {
      const [dx, dz] = [segment.xMm - at.xMm, segment.zMm - at.zMm];
      const chord = Math.hypot(dx, dz);
      const radius = Math.max(segment.arcRadiusMm, chord / 2);
      const half = Math.asin(Math.min(1, chord / 2 / radius));
      const turn = (segment.curve === "hollow" ? 1 : -1) * forward;
      // The chord's direction, then a sweep from half an angle before it to half an angle after: hollows turn left.
      const heading = Math.atan2(dz, dx) - turn * half;
      for (let i = 1; i < CHORDS; i += 1) {
        const angle = (2 * half * i) / CHORDS;
        const length = 2 * radius * Math.sin(angle / 2);
        ring.push([
          at.xMm + length * Math.cos(heading + (turn * angle) / 2),
          at.zMm + length * Math.sin(heading + (turn * angle) / 2),
        ]);
      }
    }
    ring.push([segment.xMm, segment.zMm]);
    at = segment;
  }
  const cornersPassed = [
    { s: 0, corner: [0, 0] as [number, number] },
    { s: thicknessMm, corner: [0, thicknessMm] as [number, number] },
  ]
    .filter(({ s }) => s > Math.min(along(start), along(last)) && s < Math.max(along(start), along(last)))
    .map(({ corner }) => corner);
  ring.push(...(forward === 1 ? cornersPassed.reverse() : cornersPassed));
  return [[ring]];
}

/** The waste as a wall's pieces give it, back in x from the edge and z from the front face. */
export function wasteOfWall(wall: WantedWall, thicknessMm: number): MultiPolygon {
  const deep = wall.pieces.filter(
    (piece) => piece.kind === "arc" || piece.startDepthMm + piece.endDepthMm > 0,
  );
  const points = deep.flatMap(pointsOf);
  const first = points[0];
  const last = points.at(-1);
  if (first === undefined || last === undefined) return [];
  const outline = [...points, { height: last.height, depth: 0 }, { height: first.height, depth: 0 }];
  return [[outline.map(({ height, depth }) => placed(wall, thicknessMm, height, depth))]];
}

function placed(wall: WantedWall, thicknessMm: number, height: number, depth: number): [number, number] {
  if (wall.work === "flat") return [depth, height];
  return [height, wall.face === "front" ? depth : thicknessMm - depth];
}

function pointsOf(piece: Piece): { height: number; depth: number }[] {
  if (piece.kind === "line") {
    return [
      { height: piece.fromMm, depth: piece.startDepthMm },
      { height: piece.toMm, depth: piece.endDepthMm },
    ];
  }
  const angle = (z: number) => Math.asin(Math.max(-1, Math.min(1, (z - piece.centreMm) / piece.arcRadiusMm)));
  const [from, to] = [angle(piece.fromMm), angle(piece.toMm)];
  return Array.from({ length: CHORDS + 1 }, (_, i) => {
    const at = from + ((to - from) * i) / CHORDS;
    return {
      height: piece.centreMm + piece.arcRadiusMm * Math.sin(at),
      depth: piece.centreDepthMm + piece.side * piece.arcRadiusMm * Math.cos(at),
    };
  });
}
