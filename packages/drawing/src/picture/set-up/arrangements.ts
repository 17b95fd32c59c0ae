import type { FeedDirection, Plan } from "@rimwise/domain";
import { movement, turning } from "../../drafting/arrow.ts";
import { hatched, METAL } from "../../drafting/hatch.ts";
import { SMALL_MM } from "../../drafting/page.ts";
import { textLine } from "../../drafting/text.ts";
import type { Point } from "../../scene/contour.ts";
import { circle, path, rectangle } from "../../scene/path.ts";
import type { Item } from "../../scene/scene.ts";

/** Where the bit is on the page, and what decides how things lie about it. */
export type Arranged = Point & {
  readonly isGroove: boolean;
  readonly isFedWithRotation: boolean;
  readonly guide: Plan["guide"];
};

const BIT_MM = 4.5;
const TURN_MM = 7.5;
const BASE_MM = 13;
const BAND_MM = 4.5;
const HALF_WIDTH_MM = 52;
const FENCED: ReadonlySet<Plan["guide"]> = new Set([
  "fence",
  "fence-flush-with-bearing",
  "fence-with-offset-outfeed",
  "sled",
]);

/** Work that is fed past a bit in a table, which turns counter-clockwise as seen from above. Source: geometry. */
export function atTable(direction: FeedDirection, around: Arranged): Item[] {
  const { isGroove, guide } = around;
  const place = placedAt(around);
  const bit = bitFromAbove(around, false);
  switch (direction) {
    case "work-around-opening": {
      const work = ring(around);
      return [
        ...work,
        ...bit,
        ...movement("feed", place(-10, -9), place(12, -9)),
        ...movement("feed", place(12, 15.5), place(-10, 15.5)),
        said("work", place(24, -8.2)),
      ];
    }
    case "work-around-pin": {
      const work = rectangle(place(-16, BIT_MM - 1), place(40, 16));
      return [
        path({ of: "work" }, work, "medium", "pale"),
        path({ of: "pin" }, circle(place(15, 1.5), 2), "medium", "ink"),
        ...bit,
        ...movement("feed", place(30, 11), place(2, 11)),
        said("work", place(31.5, 12)),
        said("pin", place(18.5, 0)),
      ];
    }
    default: {
      const faceMm = isGroove ? -14 : 0;
      const fence = FENCED.has(guide) ? fenceBands(around, faceMm, isGroove) : [];
      const work = rectangle(place(isGroove ? -34 : -6, faceMm), place(46, 15));
      const arrow = ordered(around, place(30, 10.5), place(-4, 10.5));
      return [
        path({ of: "work" }, work, "medium", "pale"),
        ...fence,
        ...bit,
        ...movement("feed", ...arrow),
        said("work", place(32, 11.5)),
        ...(guide === "sled" ? [...band("sled", around, 15 + BAND_MM), said("sled", place(-50, 13.5))] : []),
        ...(fence.length > 0 ? [said("fence", place(-50, faceMm - BAND_MM - 1.2))] : []),
      ];
    }
  }
}

/** A router led over the work by hand, whose bit turns clockwise as seen from above. Source: geometry. */
export function byHand(direction: FeedDirection, around: Arranged): Item[] {
  const place = placedAt(around);
  const router = [
    path({ of: "base" }, circle(place(0, 0), BASE_MM), "dashed"),
    ...bitFromAbove(around, true),
  ];
  const overWork = path(
    { of: "work" },
    rectangle(place(-HALF_WIDTH_MM, -18), place(HALF_WIDTH_MM, 18)),
    "medium",
    "pale",
  );
  const along = movement("feed", ...ordered(around, place(15, 0), place(38, 0)));
  switch (direction) {
    case "router-around-outside": {
      const piece = rectangle(place(-34, -BASE_MM - 3), place(34, 0));
      return [
        path({ of: "work" }, piece, "medium", "pale"),
        ...router,
        ...movement("feed", place(15, 3), place(37, 3)),
        ...movement("feed", place(38, 0), place(38, -16)),
        ...movement("feed", place(-38, -16), place(-38, 0)),
        said("work", place(20, -10)),
      ];
    }
    case "router-clockwise-inside":
      return [
        path(
          { of: "work" },
          rectangle(place(-HALF_WIDTH_MM, -19), place(HALF_WIDTH_MM, 19)),
          "medium",
          "pale",
        ),
        path({ of: "opening" }, rectangle(place(-36, -BIT_MM), place(36, 15)), "medium", "paper"),
        ...router,
        ...movement("feed", place(15, -1), place(33, -1)),
        ...movement("feed", place(33, 2), place(33, 13)),
        ...movement("feed", place(29, 12), place(15, 12)),
        said("work", place(40, -14)),
      ];
    case "router-left-to-right-straightedge-beyond":
      return [
        overWork,
        ...band("straightedge", around, -BASE_MM),
        ...router,
        ...along,
        said("straightedge", place(-50, -BASE_MM + 3.4)),
        said("work", place(40, 14)),
      ];
    case "router-with-template-on-left":
      return [
        overWork,
        ...band("template", around, -BIT_MM - 3.4),
        ...router,
        ...along,
        said("template", place(-50, -BIT_MM)),
        said("work", place(40, 14)),
      ];
    case "router-left-to-right-guided-edge-near":
      return [
        path(
          { of: "work" },
          rectangle(place(-HALF_WIDTH_MM, -18), place(HALF_WIDTH_MM, 12)),
          "medium",
          "pale",
        ),
        ...band("edge-guide", around, 12 + BAND_MM, 20),
        ...router,
        ...along,
        said("edge guide", place(22, 16)),
        said("work", place(40, -14)),
      ];
    case "router-rows-away":
      return [
        overWork,
        ...router,
        ...along,
        ...movement("feed", place(-38, 14), place(38, 14)),
        ...movement("feed", place(-38, -15), place(38, -15)),
        said("first row", place(-50, 11)),
        said("last row", place(-50, -11)),
      ];
    default:
      return [
        around.isGroove
          ? overWork
          : path(
              { of: "work" },
              rectangle(place(-HALF_WIDTH_MM, -18), place(HALF_WIDTH_MM, 0)),
              "medium",
              "pale",
            ),
        ...router,
        ...movement("feed", ...ordered(around, place(15, 4), place(38, 4))),
        said("work", place(40, -14)),
      ];
  }
}

function placedAt({ xMm, yMm }: Point) {
  return (rightMm: number, downMm: number): Point => ({ xMm: xMm + rightMm, yMm: yMm + downMm });
}

/** The bit, and how it turns. */
function bitFromAbove(around: Arranged, isClockwise: boolean): Item[] {
  const line = around.isGroove && !isClockwise ? "dashed" : "medium";
  return [
    path({ of: "bit" }, circle(around, BIT_MM), line, "paper"),
    ...turning("turn", around, TURN_MM, isClockwise),
  ];
}

/** An arrow, turned round for a cut with the rotation. */
function ordered({ isFedWithRotation }: Arranged, from: Point, to: Point): readonly [Point, Point] {
  return isFedWithRotation ? [to, from] : [from, to];
}

/** A fence beyond the bit, closed up to it on both sides; whole behind a groove. */
function fenceBands(around: Arranged, faceMm: number, isWhole: boolean): Item[] {
  const place = placedAt(around);
  const openMm = isWhole ? 0 : TURN_MM + 2;
  const contours = [
    ...rectangle(place(-HALF_WIDTH_MM, faceMm - BAND_MM), place(-openMm, faceMm)),
    ...rectangle(place(openMm, faceMm - BAND_MM), place(HALF_WIDTH_MM, faceMm)),
  ];
  return [path({ of: "fence" }, contours, "medium", "paper"), hatched({ of: "fence" }, contours, METAL)];
}

/** A straight thing along the way, whose near side lies so far down. */
function band(of: string, around: Arranged, nearMm: number, halfMm = HALF_WIDTH_MM): Item[] {
  const place = placedAt(around);
  const contours = rectangle(place(-halfMm, nearMm - BAND_MM), place(halfMm, nearMm));
  return [path({ of }, contours, "medium", "paper"), hatched({ of }, contours, METAL)];
}

/** Work with an opening whose wall is cut. */
function ring(around: Arranged): Item[] {
  const place = placedAt(around);
  const contours = [
    ...rectangle(place(-40, -14), place(40, 19)),
    ...rectangle(place(-26, -BIT_MM), place(26, 12)),
  ];
  return [path({ of: "work" }, contours, "medium", "pale")];
}

function said(text: string, { xMm, yMm }: Point): Item {
  return textLine(text, yMm, { xMm, sizeMm: SMALL_MM, widthMm: 30 });
}
