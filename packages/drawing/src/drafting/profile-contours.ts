import type { Profile, ProfilePoint } from "@rimwise/domain";
import type { Contour } from "../scene/contour.ts";
import { type Frame, onPaper } from "../scene/frame.ts";
import { polyline } from "../scene/path.ts";

/** Chords of a drawn wall stay so near to it, mm: with the corners that are saved, within the hundredth that a drawing is held to. */
export const CHORD_MM = 0.004;

/** The cross-section of a piece of wood on paper; `seen` lays it where it lies in the drawing. */
export function profileContours(
  profile: Profile,
  frame: Frame,
  seen: (point: ProfilePoint) => ProfilePoint = (point) => point,
): Contour[] {
  return profile.flatMap(({ boundary, holes }) =>
    [boundary, ...holes].flatMap((ring) =>
      polyline(
        ring.map((point) => {
          const { xMm, zMm } = seen(point);
          return onPaper(frame, xMm, zMm);
        }),
        true,
      ),
    ),
  );
}
