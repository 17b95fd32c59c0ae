import { type WantedPath, type WantedProfile, type WantedSegment, wantedFrom } from "@rimwise/domain";
import { flattened } from "../outlines/flatten.ts";
import { readPath } from "../outlines/read-path.ts";
import type { Corner, Stroke } from "../outlines/stroke.ts";
import { pointedBy } from "../problems/from-error.ts";
import { type FieldFault, notValid } from "../problems/problem.ts";
import type { ProfileShape } from "./shape-schema.ts";

/** A Bézier curve of a path becomes lines that stay this near to it, mm: nearer than a wall is cut. Ours. */
const CURVE_TOLERANCE_MM = 0.02;

/** The profile that a shape describes. Throws a problem that names each field that cannot be accepted, under `pointer`. */
export function wantedOf(shape: ProfileShape, pointer: string): WantedProfile {
  const path = pathOf(shape, pointer);
  const isDrawn = shape.path !== undefined;
  return pointedBy(
    (field) => `${pointer}${isDrawn && field !== "/thicknessMm" ? "/path" : field}`,
    () => wantedFrom(path),
  );
}

function pathOf(
  { thicknessMm, start, segments, path, unitMm = 1 }: ProfileShape,
  pointer: string,
): WantedPath {
  if (path === undefined) {
    if (start !== undefined && segments !== undefined) return { thicknessMm, start, segments };
    throw notValid([missing(`${pointer}/${start === undefined ? "start" : "segments"}`)]);
  }
  if (start !== undefined || segments !== undefined) {
    const accepted = "a path, or start and segments";
    throw notValid([
      { in: "body", pointer: `${pointer}/path`, message: "The wall is given twice.", accepted },
    ]);
  }
  const read = readPath(path, unitMm);
  if ("message" in read) throw notValid([{ in: "body", pointer: `${pointer}/path`, ...read }]);
  let from = read.start;
  const drawn = read.strokes.flatMap((stroke) => {
    const made = segmentsOf(from, stroke);
    from = stroke.to;
    return made;
  });
  return { thicknessMm, start: { xMm: read.start.xMm, zMm: read.start.yMm }, segments: drawn };
}

function segmentsOf(from: Corner, stroke: Stroke): WantedSegment[] {
  const end = { xMm: stroke.to.xMm, zMm: stroke.to.yMm };
  switch (stroke.kind) {
    case "line":
      return [{ kind: "line", ...end }];
    case "arc":
      // Where the wall bulges into the work, the work is left hollow.
      return [
        {
          kind: "arc",
          ...end,
          arcRadiusMm: stroke.radiusMm,
          curve: stroke.bulge === "outward" ? "hollow" : "round",
        },
      ];
    case "curve":
      return flattened(from, stroke.controls, stroke.to, CURVE_TOLERANCE_MM).map(({ xMm, yMm }) => ({
        kind: "line",
        xMm,
        zMm: yMm,
      }));
  }
}

function missing(pointer: string): FieldFault {
  return { in: "body", pointer, message: "It is needed.", accepted: "start and segments, or a path" };
}
