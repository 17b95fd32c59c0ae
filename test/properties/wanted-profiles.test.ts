import {
  DomainError,
  type ProfilePoint,
  type WantedPath,
  type WantedProfile,
  type WantedSegment,
  wantedFrom,
} from "@rimwise/domain";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { area, differenceArea } from "../reference/polygons.ts";
import { risingPaths, wasteOfPath, wasteOfWall } from "./wanted-paths.ts";

/** Both are drawn with chords, which miss the arcs by less than this share of the whole. */
const WITHIN_SHARE = 1e-4;

function wantedOf(path: WantedPath): WantedProfile | undefined {
  try {
    return wantedFrom(path);
  } catch (error) {
    if (error instanceof DomainError) return undefined;
    throw error;
  }
}

function turnedOver(path: WantedPath): WantedPath {
  const over = <Point extends ProfilePoint>(point: Point): Point => ({
    ...point,
    zMm: path.thicknessMm - point.zMm,
  });
  return { thicknessMm: path.thicknessMm, start: over(path.start), segments: path.segments.map(over) };
}

function backward(path: WantedPath): WantedPath {
  const corners = [path.start, ...path.segments];
  const segments = path.segments.map((segment, index): WantedSegment => {
    const { xMm, zMm } = corners[index] ?? path.start;
    return { ...segment, xMm, zMm };
  });
  return { ...path, start: path.segments.at(-1) ?? path.start, segments: segments.reverse() };
}

describe("a wanted profile", () => {
  it("takes away what lies between its path and the stock's surface, however the work is presented", () => {
    let seen = 0;
    fc.assert(
      fc.property(risingPaths, (path) => {
        const wanted = wantedOf(path);
        if (wanted === undefined) return;
        const waste = wasteOfPath(path);
        for (const wall of wanted.walls) {
          seen += 1;
          const difference = differenceArea(wasteOfWall(wall, path.thicknessMm), waste);
          expect(difference).toBeLessThan(WITHIN_SHARE * area(waste) + 1e-3);
        }
      }),
    );
    // Not all of them were refused.
    expect(seen).toBeGreaterThan(50);
  });

  it("is the same turned over: front is back and back is front", () => {
    fc.assert(
      fc.property(risingPaths, (path) => {
        const [one, other] = [wantedOf(path), wantedOf(turnedOver(path))];
        expect(one === undefined).toBe(other === undefined);
        if (one === undefined || other === undefined) return;
        const names = ({ walls }: WantedProfile) => walls.map(({ work, face }) => `${work} ${face}`).sort();
        const swapped = names(other).map((name) =>
          name === "standing front" ? "standing back" : name === "standing back" ? "standing front" : name,
        );
        expect(names(one)).toEqual(swapped.sort());
        const standing = (wanted: WantedProfile) => wanted.walls.filter(({ work }) => work === "standing");
        standing(one).forEach((wall, index) => {
          const same = standing(other)[index];
          expect(wall.pieces.length).toBe(same?.pieces.length);
          wall.pieces.forEach((piece, at) => {
            expect(piece.fromMm).toBeCloseTo(same?.pieces[at]?.fromMm ?? Number.NaN, 9);
          });
        });
      }),
    );
  });

  it("is the same from either end of its path", () => {
    fc.assert(
      fc.property(risingPaths, (path) => {
        const [one, other] = [wantedOf(path), wantedOf(backward(path))];
        expect(one === undefined).toBe(other === undefined);
        one?.walls.forEach((wall, index) => {
          const polygons = wasteOfWall(wall, path.thicknessMm);
          const same = other?.walls[index];
          expect(same && differenceArea(wasteOfWall(same, path.thicknessMm), polygons)).toBeLessThan(1e-6);
        });
      }),
    );
  });

  it("comes back from the pieces of its wall", () => {
    fc.assert(
      fc.property(risingPaths, (path) => {
        const wanted = wantedOf(path);
        const flat = wanted?.walls.find(({ work }) => work === "flat");
        if (flat === undefined) return;
        const again = wantedFrom(pathOf(flat.pieces, path.thicknessMm));
        const difference = differenceArea(
          wasteOfWall(again.walls[0] ?? flat, path.thicknessMm),
          wasteOfWall(flat, path.thicknessMm),
        );
        expect(difference).toBeLessThan(1e-3);
      }),
    );
  });
});

/** A path along the pieces of a flat wall, with a step wherever two of them do not meet. */
function pathOf(pieces: WantedProfile["walls"][number]["pieces"], thicknessMm: number): WantedPath {
  const depth = (piece: (typeof pieces)[number], z: number) =>
    piece.kind === "line"
      ? z === piece.fromMm
        ? piece.startDepthMm
        : piece.endDepthMm
      : piece.centreDepthMm +
        piece.side * Math.sqrt(Math.max(0, piece.arcRadiusMm ** 2 - (z - piece.centreMm) ** 2));
  const segments = pieces.flatMap((piece): WantedSegment[] => {
    const to = { xMm: Math.max(0, depth(piece, piece.toMm)), zMm: piece.toMm };
    return [
      { kind: "line", xMm: Math.max(0, depth(piece, piece.fromMm)), zMm: piece.fromMm },
      piece.kind === "line"
        ? { kind: "line", ...to }
        : {
            kind: "arc",
            ...to,
            arcRadiusMm: piece.arcRadiusMm,
            curve: piece.side === 1 ? "hollow" : "round",
          },
    ];
  });
  const [first] = segments;
  return { thicknessMm, start: first ?? { xMm: 0, zMm: 0 }, segments };
}
