import type { Outline } from "@rimwise/domain";
import { type Frame, onPaper } from "../scene/frame.ts";
import { path, polyline, worldRectangle } from "../scene/path.ts";
import type { PathItem } from "../scene/scene.ts";
import type { Standing } from "./outline-path.ts";

/** The bearings of a bit: each a plain box with a cross on both sides of its screw. From memory, after ISO 8826. */
export function bearings(
  outline: Outline,
  frame: Frame,
  { axisMm, tipMm, shankToward }: Standing,
): PathItem[] {
  return outline.flatMap((segment) => {
    if (segment.role !== "pilot" || segment.kind !== "line") return [];
    const radiusMm = segment.startRadiusMm;
    const [fromMm, toMm] = [tipMm + shankToward * segment.fromMm, tipMm + shankToward * segment.toMm];
    const at = (outMm: number, alongMm: number) => onPaper(frame, axisMm + outMm, alongMm);
    const crosses = [-radiusMm, radiusMm].flatMap((outMm) => [
      ...polyline([at(outMm, fromMm), at(outMm / 2, toMm)]),
      ...polyline([at(outMm / 2, fromMm), at(outMm, toMm)]),
      ...polyline([at(outMm / 2, fromMm), at(outMm / 2, toMm)]),
    ]);
    const box = worldRectangle(frame, [axisMm - radiusMm, fromMm], [axisMm + radiusMm, toMm]);
    return [path({ of: "bearing" }, box, "medium", "paper"), path({ of: "bearing-cross" }, crosses, "thin")];
  });
}
