import svgpath from "svgpath";
import type { Corner, PathFault, Stroke } from "./stroke.ts";

export type ReadPath = { readonly start: Corner; readonly strokes: readonly Stroke[] } | PathFault;

type Segment = Parameters<Parameters<ReturnType<typeof svgpath>["iterate"]>[0]>[0];

/** Radii that differ by less than this share are one: transforming an arc rounds. */
const SAME_RADIUS_RATIO = 1e-9;

const ONE_OPEN_PATH = "one open path of M, L, H, V, A (with rx = ry), C, S, Q and T, absolute or relative";
const EXAMPLE = "M 4 0 V -5 A 10 10 0 0 1 14 -15";

/**
 * SVG path data as strokes in mm. In a drawing y grows downward; a bit drawn standing on its tip grows upward, so that
 * the distance from the tip is −y.
 */
export function readPath(path: string, unitMm: number): ReadPath {
  const drawn = svgpath(path);
  // The library's types leave out where it says that it could not read on.
  const error: unknown = Reflect.get(drawn, "err");
  if (error !== "") {
    return { message: "This is not SVG path data.", accepted: `SVG path data, such as ${EXAMPLE}` };
  }
  const starts: Corner[] = [];
  const read: (Stroke | PathFault)[] = [];
  drawn
    .abs()
    .unshort()
    .scale(unitMm, -unitMm)
    .iterate((segment, index, x, y) => {
      const [, ...numbers] = segment;
      if (!numbers.every((number) => Number.isFinite(Number(number)))) read.push(endless(index + 1));
      else if (segment[0] === "M" && index === 0) starts.push({ xMm: segment[1], yMm: segment[2] });
      else read.push(strokeOf(segment, index + 1, { xMm: x, yMm: y }));
    });
  const fault = read.find((each) => "message" in each);
  if (fault !== undefined) return fault;
  const strokes = read.filter((each) => "command" in each);
  const [start] = starts;
  if (start === undefined || strokes.length === 0) {
    return {
      message: "The path has no line.",
      accepted: `a path with at least one line, such as ${EXAMPLE}`,
    };
  }
  return { start, strokes };
}

function strokeOf(segment: Segment, command: number, from: Corner): Stroke | PathFault {
  switch (segment[0]) {
    case "L":
      return { kind: "line", command, to: { xMm: segment[1], yMm: segment[2] } };
    case "H":
      return { kind: "line", command, to: { xMm: segment[1], yMm: from.yMm } };
    case "V":
      return { kind: "line", command, to: { xMm: from.xMm, yMm: segment[1] } };
    case "C":
    case "Q":
      return curveOf(segment.slice(1).map(Number), command);
    case "A":
      return arcOf(segment.slice(1).map(Number), command, from);
    case "M":
      return { message: `Command ${command} starts a second path.`, accepted: ONE_OPEN_PATH };
    case "Z":
    case "z":
      return {
        message: `Command ${command} closes the path; an outline stays open.`,
        accepted: ONE_OPEN_PATH,
      };
    default:
      return { message: `Command ${command}, ${segment[0]}, cannot be read.`, accepted: ONE_OPEN_PATH };
  }
}

function endless(command: number): PathFault {
  return { message: `Command ${command} has a number that is not finite.`, accepted: "finite numbers" };
}

function curveOf(numbers: readonly number[], command: number): Stroke {
  const corners: Corner[] = [];
  for (let index = 0; index < numbers.length; index += 2) {
    corners.push({ xMm: numbers[index] ?? 0, yMm: numbers[index + 1] ?? 0 });
  }
  const to = corners.at(-1) ?? { xMm: 0, yMm: 0 };
  return { kind: "curve", command, to, controls: corners.slice(0, -1) };
}

function arcOf(numbers: readonly number[], command: number, from: Corner): Stroke | PathFault {
  const [radiusX = 0, radiusY = 0, , large, sweep, xMm = 0, yMm = 0] = numbers;
  if (Math.abs(radiusX - radiusY) > SAME_RADIUS_RATIO * radiusX) {
    return {
      message: `Command ${command} is an arc of an ellipse.`,
      accepted: "arcs of circles, with rx = ry",
    };
  }
  const chordMm = Math.hypot(xMm - from.xMm, yMm - from.yMm);
  if (large === 1 && chordMm < 2 * radiusX * (1 - SAME_RADIUS_RATIO)) {
    return {
      message: `Command ${command} is more than half a circle, so it turns back.`,
      accepted: "arcs of at most half a circle that run away from the tip all the way",
    };
  }
  // An arc too small for its ends is drawn as large as they need (SVG 2, appendix B.2.5).
  const radiusMm = Math.max(radiusX, chordMm / 2);
  return { kind: "arc", command, to: { xMm, yMm }, radiusMm, bulge: sweep === 1 ? "outward" : "inward" };
}
