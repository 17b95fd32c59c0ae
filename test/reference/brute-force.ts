import type { Presentation, WantedPath } from "@rimwise/domain";
import type { Pair } from "polygon-clipping";
import { wasteOfPath } from "../properties/wanted-paths.ts";
import { radiusAt } from "./polygons.ts";
import type { rackOf } from "./search-rack.ts";

/** Heights of the work lie half a step off the heights of the bit, so that one table of radii serves all of them, mm apart. */
const STEP_MM = 0.05;

/** Standing work is looked at so far past what is wanted, mm. */
const PAST_MM = 40;

type Bit = ReturnType<typeof rackOf>[number];

/** A wall as one presentation shows it: its depth at the middle of each step of height. */
export type SampledWall = readonly number[];

/**
 * Whether some height on a grid makes a wall within tolerance with a bit, by trying every one: the fence comes forward until
 * the bit touches the wall at some step of its height, and at every step so much must then be gone that no place left is
 * farther than the tolerance from the wood of any other step. Steps next to each other are taken together, on the cautious
 * side. Knows nothing of corners, slopes or bounds.
 */
export function isMadeOnGrid(
  bit: Bit,
  { work, face }: Presentation,
  wall: SampledWall,
  toleranceMm: number,
): boolean {
  // Turned over, the work's steps are counted from its other face.
  const depths = work === "flat" && face === "back" ? [...wall].reverse() : wall;
  const needed = depths.map((_, step) => neededAt(depths, step, toleranceMm - STEP_MM));
  const lengthSteps = Math.floor((bit.outline.at(-1)?.toMm ?? 0) / STEP_MM);
  const radii = Array.from({ length: lengthSteps + 1 }, (_, step) => edgeAt(bit, (step + 0.5) * STEP_MM));
  const around = (step: number) => [radii[step - 1], radii[step], radii[step + 1]].map((r) => r ?? -Infinity);
  const least = radii.map((_, step) => Math.min(...around(step)));
  const most = radii.map((_, step) => Math.max(...around(step)));
  for (let height = 1; height <= lengthSteps; height += 1) {
    const fence = fenceAt(bit, height, depths, most);
    const isMade = needed.every(
      (depth, step) => (least[height - 1 - step] ?? -Infinity) - fence >= depth || depth <= 0,
    );
    if (isMade) return true;
  }
  return false;
}

/**
 * The wall's depth at each step, by where a level line leaves the polygon of the waste; undefined if it leaves it more than
 * once, or the work could not lie so.
 */
export function sampledWall({ work, face }: Presentation, path: WantedPath): SampledWall | undefined {
  const turn = ([x, z]: Pair): Pair =>
    work === "flat" ? [x, z] : [face === "front" ? z : path.thicknessMm - z, x];
  const ring = wasteOfPath(path)[0]?.[0]?.map(turn) ?? [];
  const edges = ring.map((one, index) => [one, ring[(index + 1) % ring.length] ?? one] as const);
  const topMm = work === "flat" ? path.thicknessMm : Math.max(...ring.map(([, height]) => height)) + PAST_MM;
  const depths: number[] = [];
  for (let step = 0; step < Math.round(topMm / STEP_MM); step += 1) {
    const z = (step + 0.5) * STEP_MM + 1e-7;
    const crossed = edges
      .filter(([[, a], [, b]]) => a < z !== b < z)
      .map(([[ax, az], [bx, bz]]) => ax + ((z - az) / (bz - az)) * (bx - ax))
      .sort((a, b) => a - b);
    if (crossed.length > 2 || (crossed[0] ?? 0) > 1e-6) return undefined;
    depths.push(crossed[1] ?? 0);
  }
  // Standing, some of the edge must stay to stand on.
  return work === "standing" && Math.max(...depths) >= path.thicknessMm ? undefined : depths;
}

/** So deep must be gone at a step that what is left there is near enough to the wood of some step. */
function neededAt(depths: SampledWall, step: number, toleranceMm: number): number {
  const reach = Math.floor(toleranceMm / STEP_MM);
  let needed = Infinity;
  for (
    let other = Math.max(0, step - reach);
    other <= Math.min(depths.length - 1, step + reach);
    other += 1
  ) {
    const apart = (other - step) * STEP_MM;
    needed = Math.min(needed, (depths[other] ?? 0) - Math.sqrt(toleranceMm ** 2 - apart ** 2));
  }
  return needed;
}

/** Where the bit's axis stands when it touches, never nearer than its pilot and what does not cut beside the work allow. */
function fenceAt(bit: Bit, height: number, depths: SampledWall, most: readonly number[]): number {
  const heightMm = height * STEP_MM;
  let fence = Math.max(0, bit.pilotRadiusMm ?? 0);
  for (const segment of bit.outline) {
    const isBeside = segment.toMm > heightMm - depths.length * STEP_MM && segment.fromMm < heightMm;
    if (segment.role === "body" && isBeside) fence = Math.max(fence, radiusAt(segment, segment.fromMm));
  }
  for (let step = 0; step < Math.min(height, depths.length); step += 1) {
    fence = Math.max(fence, (most[height - 1 - step] ?? -Infinity) - (depths[step] ?? 0));
  }
  return fence;
}

function edgeAt(bit: Bit, t: number): number {
  const segment = bit.outline.find(({ role, fromMm, toMm }) => role === "edge" && t >= fromMm && t <= toMm);
  return segment === undefined ? -Infinity : radiusAt(segment, t);
}
