import type { Segment, WantedPath, WantedSegment } from "@rimwise/domain";
import type { Random } from "../fuzz/random.ts";
import { radiusAt } from "./polygons.ts";
import { between } from "./search-rack.ts";

/** What the search is tried with is worked out here, apart from the domain: settings first, then the profile they leave. */
type Bit = {
  readonly id: string;
  readonly outline: readonly Segment[];
  readonly pilotRadiusMm: number | undefined;
};

export type Cut = {
  readonly bit: Bit;
  readonly work: "flat" | "standing";
  readonly face: "front" | "back";
  readonly heightMm: number;
  readonly fenceMm: number;
};

/** How deep a cut goes at each height from one to another, and the segment it comes from. */
export type Reach = {
  readonly fromMm: number;
  readonly toMm: number;
  readonly depthAt: (heightMm: number) => number;
  readonly segment: Segment;
};

/** Standing work is as high as nothing here reaches. */
const STANDING_MM = 150;

/** Where two reaches cross is looked for between so many places. */
const PLACES = 48;

/** Corners are typed to hundredths: nearer to a face than this is on it, mm. */
const TYPED_MM = 0.02;

/** Heights at which two sets of cuts are compared. */
const PAST_PLACES = 1500;

/** Planted cuts go at least so deep and so far along, mm. */
const LEAST_MM = 0.8;

export function topOf(cut: { readonly work: "flat" | "standing" }, thicknessMm: number): number {
  return cut.work === "flat" ? thicknessMm : STANDING_MM;
}

/** The reach of a cut, at heights from the front face up (flat) or from the edge (standing). */
export function reachesOf({ bit, work, face, heightMm, fenceMm }: Cut, thicknessMm: number): Reach[] {
  const isOver = work === "flat" && face === "back";
  const topMm = topOf({ work }, thicknessMm);
  return bit.outline
    .filter(({ role }) => role === "edge")
    .map((segment) => {
      const place = (t: number) => (isOver ? topMm - heightMm + t : heightMm - t);
      const along = (z: number) => (isOver ? z - topMm + heightMm : heightMm - z);
      const [one, other] = [place(segment.fromMm), place(segment.toMm)];
      return {
        fromMm: Math.max(0, Math.min(one, other)),
        toMm: Math.min(topMm, Math.max(one, other)),
        depthAt: (z: number) =>
          radiusAt(segment, Math.min(segment.toMm, Math.max(segment.fromMm, along(z)))) - fenceMm,
        segment,
      };
    })
    .filter(({ fromMm, toMm }) => toMm > fromMm);
}

/**
 * A cut at a random setting that a person could make: shank out of the work, pilot and body off the wood. Undefined if chance
 * gave none.
 */
export function randomCut(
  bit: Bit,
  presentation: { readonly work: "flat" | "standing"; readonly face: "front" | "back" },
  thicknessMm: number,
  random: Random,
): Cut | undefined {
  const lengthMm = bit.outline.at(-1)?.toMm ?? 0;
  const heightMm = between(random, 1, lengthMm);
  const topMm = topOf(presentation, thicknessMm);
  const beside = bit.outline.filter(({ fromMm, toMm }) => toMm > heightMm - topMm && fromMm < heightMm);
  const bodies = beside
    .filter(({ role }) => role === "body")
    .map((segment) => radiusAt(segment, segment.fromMm));
  const edges = beside.filter(({ role }) => role === "edge");
  const rimMm = Math.max(
    0,
    ...edges.flatMap((segment) => [segment.fromMm, segment.toMm].map((t) => radiusAt(segment, t))),
  );
  const leastMm = Math.max(0, bit.pilotRadiusMm ?? 0, ...bodies);
  const deepestMm = presentation.work === "flat" ? 30 : thicknessMm - 2;
  if (rimMm - leastMm < LEAST_MM) return undefined;
  const depthMm = Math.min(deepestMm, between(random, LEAST_MM, rimMm - leastMm));
  // Half of the bits with a pilot run on it.
  const fenceMm =
    bit.pilotRadiusMm === leastMm && random.percent(50)
      ? Math.max(leastMm, rimMm - deepestMm)
      : rimMm - depthMm;
  const cut = { bit, ...presentation, heightMm, fenceMm };
  const deep = reachesOf(cut, thicknessMm).some(({ fromMm, toMm, depthAt }) =>
    [0.2, 0.5, 0.8].some(
      (share) => toMm - fromMm > 0.5 && depthAt(fromMm + share * (toMm - fromMm)) > LEAST_MM / 2,
    ),
  );
  return deep ? cut : undefined;
}

/**
 * Whether a path has a corner nearer to the stock's surface than corners are typed, but not on it: no profile that somebody
 * wants, and it would be taken as on the surface.
 */
export function grazesSurface({ thicknessMm, start, segments }: WantedPath): boolean {
  return [start, ...segments].some(({ xMm, zMm }) =>
    [xMm, zMm, thicknessMm - zMm].some((offMm) => offMm > 1e-9 && offMm < TYPED_MM),
  );
}

/**
 * The farthest that one set of cuts goes past another, straight in, at many heights of the work: what both share is worked out
 * without chords.
 */
export function pastMm(cuts: readonly Cut[], planted: readonly Cut[], thicknessMm: number): number {
  const topMm = topOf(planted[0] ?? { work: "flat" }, thicknessMm);
  const deepest = (all: readonly Cut[]) => {
    const reaches = all.flatMap((cut) => reachesOf(cut, thicknessMm));
    return (z: number) =>
      reaches.reduce(
        (most, { fromMm, toMm, depthAt }) => (z >= fromMm && z <= toMm ? Math.max(most, depthAt(z)) : most),
        0,
      );
  };
  const [goes, may] = [deepest(cuts), deepest(planted)];
  const heights = Array.from({ length: PAST_PLACES }, (_, i) => ((i + Math.SQRT1_2) / PAST_PLACES) * topMm);
  return Math.max(...heights.map((z) => goes(z) - may(z)));
}

/** What all of the cuts together leave, as a path: the deepest at each height. */
export function pathLeftBy(cuts: readonly Cut[], thicknessMm: number): WantedPath {
  const [first] = cuts;
  if (first === undefined) throw new Error("no cuts");
  const topMm = topOf(first, thicknessMm);
  const uncut: Segment = {
    kind: "line",
    fromMm: 0,
    toMm: topMm,
    startRadiusMm: 0,
    endRadiusMm: 0,
    role: "edge",
  };
  const reaches: Reach[] = [
    { fromMm: 0, toMm: topMm, depthAt: () => 0, segment: uncut },
    ...cuts.flatMap((cut) => reachesOf(cut, thicknessMm)),
  ];
  const bounds = boundsOf(reaches, topMm);
  const parts: { fromMm: number; toMm: number; reach: Reach }[] = [];
  bounds.slice(1).forEach((toMm, index) => {
    const fromMm = bounds[index] ?? toMm;
    if (toMm - fromMm < 1e-9) return;
    const reach = deepestAt(reaches, (fromMm + toMm) / 2);
    const last = parts.at(-1);
    if (last !== undefined && last.reach === reach) parts[parts.length - 1] = { ...last, toMm };
    else parts.push({ fromMm, toMm, reach });
  });
  return pathAlong(parts, first, thicknessMm);
}

function boundsOf(reaches: readonly Reach[], topMm: number): number[] {
  const ends = [0, topMm, ...reaches.flatMap(({ fromMm, toMm }) => [fromMm, toMm])];
  const crossings = reaches.flatMap((one, index) =>
    reaches.slice(index + 1).flatMap((other) => crossingsOf(one, other)),
  );
  return [...ends, ...crossings].sort((a, b) => a - b);
}

/** Where one reach becomes deeper than another: by halving between places where that changes. */
function crossingsOf(one: Reach, other: Reach): number[] {
  const fromMm = Math.max(one.fromMm, other.fromMm);
  const toMm = Math.min(one.toMm, other.toMm);
  if (toMm <= fromMm) return [];
  const difference = (z: number) => one.depthAt(z) - other.depthAt(z);
  const at = (place: number) => fromMm + ((toMm - fromMm) * place) / PLACES;
  return Array.from({ length: PLACES }, (_, place) => [at(place), at(place + 1)] as const)
    .filter(([low, high]) => Math.sign(difference(low)) !== Math.sign(difference(high)))
    .map(([low, high]) => {
      let [a, b] = [low, high];
      for (let i = 0; i < 60; i += 1) {
        const middle = (a + b) / 2;
        if (Math.sign(difference(middle)) === Math.sign(difference(a))) a = middle;
        else b = middle;
      }
      return a;
    });
}

function deepestAt(reaches: readonly Reach[], z: number): Reach {
  const there = reaches.filter(({ fromMm, toMm }) => z >= fromMm && z <= toMm);
  return there.reduce((best, each) => (each.depthAt(z) > best.depthAt(z) + 1e-12 ? each : best));
}

function pathAlong(
  parts: readonly { fromMm: number; toMm: number; reach: Reach }[],
  { work, face }: Cut,
  thicknessMm: number,
): WantedPath {
  const point = (heightMm: number, depthMm: number) => {
    if (work === "flat") return { xMm: depthMm, zMm: heightMm };
    return { xMm: heightMm, zMm: face === "front" ? depthMm : thicknessMm - depthMm };
  };
  const segments: WantedSegment[] = [];
  let start: { xMm: number; zMm: number } | undefined;
  let at = { xMm: 0, zMm: 0 };
  const go = (segment: WantedSegment) => {
    if (Math.hypot(segment.xMm - at.xMm, segment.zMm - at.zMm) < 1e-9) return;
    segments.push(segment);
    at = segment;
  };
  parts.forEach(({ fromMm, toMm, reach: { depthAt, segment } }, index) => {
    const isLast = index === parts.length - 1;
    const from = point(fromMm, Math.max(0, depthAt(fromMm)));
    if (start === undefined) {
      start = from;
      at = from;
    } else go({ kind: "line", ...from });
    // Standing, the work goes on above the cut: the path ends on the face.
    if (isLast && work === "standing") return;
    const to = point(toMm, Math.max(0, depthAt(toMm)));
    if (segment.kind === "line") go({ kind: "line", ...to });
    else {
      const curve = segment.side === 1 ? "hollow" : "round";
      go({ kind: "arc", ...to, arcRadiusMm: segment.arcRadiusMm, curve });
    }
  });
  return { thicknessMm, start: start ?? at, segments };
}
