import { type Bit, formPilotRadiusMm, type Outline, stretchesAbove } from "@rimwise/domain";
import { bearings } from "../../drafting/bearing.ts";
import { broken } from "../../drafting/break-line.ts";
import { outlineContour } from "../../drafting/outline-path.ts";
import { onPaper } from "../../scene/frame.ts";
import { path, polyline, worldRectangle } from "../../scene/path.ts";
import type { PathItem } from "../../scene/scene.ts";
import { type BitLayout, ON_ITS_SHANK } from "./layout.ts";

/** Past the bit on both sides an axis is drawn on, mm of paper. */
const AXIS_PAST_MM = 2.5;

/** The bit as one sees it from the side: shank, head with the hub behind its wings, bearings, axis. */
export function bitShape(bit: Bit, outline: Outline, layout: BitLayout): PathItem[] {
  const { frame, headMm, shankRadiusMm, shankShownMm, scale } = layout;
  const footMm = headMm + shankShownMm;
  const shank = worldRectangle(frame, [-shankRadiusMm, headMm], [shankRadiusMm, footMm]);
  return [
    path({ of: "shank" }, shank, "medium", "paper"),
    ...broken(frame, [-shankRadiusMm, footMm], [shankRadiusMm, footMm]),
    path({ of: "outline" }, outlineContour(outline, frame, ON_ITS_SHANK), "medium", "pale"),
    path({ of: "hub" }, hubLines(bit, outline, layout), "thin"),
    ...bearings(outline, frame, ON_ITS_SHANK),
    path(
      { of: "axis" },
      polyline([onPaper(frame, 0, -AXIS_PAST_MM / scale), onPaper(frame, 0, footMm + AXIS_PAST_MM / scale)]),
      "chain",
    ),
  ];
}

/** The body that carries the wings: as thick as the shank or the bearing, seen where the wings stand out past it. */
function hubLines({ form, shankDiameterMm }: Bit, outline: Outline, { frame }: BitLayout) {
  const pilotMm = formPilotRadiusMm(form) ?? 0;
  const hubMm = Math.max(shankDiameterMm / 2, pilotMm);
  return outline
    .filter(({ role }) => role === "edge")
    .flatMap((segment) => stretchesAbove(segment, segment, hubMm))
    .flatMap(({ fromMm, toMm }) =>
      [-hubMm, hubMm].flatMap((xMm) => polyline([onPaper(frame, xMm, fromMm), onPaper(frame, xMm, toMm)])),
    );
}
