import { type Form, formOutline, type Outline, removedAreaMm2 } from "@rimwise/domain";
import polygonClipping, { type Polygon, type Ring } from "polygon-clipping";
import { describe, expect, it } from "vitest";

// Sections of removed wood against polygon-clipping (a general-purpose polygon library): the bit as a
// many-sided polygon, the work as a rectangle, the area of what they share.

const FORMS: readonly Form[] = [
  { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 },
  { kind: "rabbet", diameterMm: 34.9, cuttingLengthMm: 12.7, pilotDiameterMm: 15.9 },
  { kind: "chamfer", diameterMm: 38.1, angleDeg: 45, pilotDiameterMm: 12.7 },
  { kind: "chamfer", diameterMm: 25.4, angleDeg: 30 },
  { kind: "round-over", diameterMm: 38.1, radiusMm: 12.7 },
  { kind: "round-over", diameterMm: 38.1, radiusMm: 12.7, pilotDiameterMm: 9.5 },
  { kind: "cove", diameterMm: 38.1, radiusMm: 12.7 },
  { kind: "core-box", diameterMm: 19, cuttingLengthMm: 25 },
  {
    kind: "panel-raising",
    diameterMm: 88.9,
    pilotDiameterMm: 12.7,
    profileHeightMm: 12,
    face: "bevel",
    tongueWidthMm: 9,
  },
  { kind: "panel-raising", diameterMm: 88.9, pilotDiameterMm: 12.7, profileHeightMm: 14, face: "cove" },
  {
    kind: "panel-raising",
    diameterMm: 73,
    pilotDiameterMm: 12.7,
    profileHeightMm: 13,
    face: "ogee",
    tongueWidthMm: 6,
  },
];

const SAMPLES = 4000;

/** Half the bit, x from the axis outward, z up from the table, cutting edges only. */
function cuttingPolygons(outline: Outline, heightMm: number): Polygon[] {
  return outline
    .filter(({ role }) => role === "edge")
    .map((segment): Polygon => {
      const ring: Ring = [];
      for (let i = 0; i <= SAMPLES; i += 1) {
        // Closer together towards the ends, where an arc may run square to the axis.
        const along = (1 - Math.cos((Math.PI * i) / SAMPLES)) / 2;
        const t = segment.fromMm + (segment.toMm - segment.fromMm) * along;
        ring.push([radiusAt(segment, t), heightMm - t]);
      }
      ring.push([-1, heightMm - segment.toMm], [-1, heightMm - segment.fromMm]);
      return [ring];
    });
}

function radiusAt(segment: Outline[number], t: number): number {
  if (segment.kind === "line") {
    return (
      segment.startRadiusMm +
      ((segment.endRadiusMm - segment.startRadiusMm) * (t - segment.fromMm)) / (segment.toMm - segment.fromMm)
    );
  }
  return (
    segment.centreRadiusMm +
    segment.side * Math.sqrt(Math.max(0, segment.arcRadiusMm ** 2 - (t - segment.centreMm) ** 2))
  );
}

function area(polygons: readonly Polygon[]): number {
  return polygons.reduce(
    (sum, rings) => sum + rings.reduce((inner, ring, i) => inner + (i === 0 ? 1 : -1) * ringArea(ring), 0),
    0,
  );
}

function ringArea(ring: Ring): number {
  let twice = 0;
  ring.forEach(([x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length] ?? [x, y];
    twice += x * nextY - nextX * y;
  });
  return Math.abs(twice) / 2;
}

describe("removed section against a polygon library", () => {
  const cases = FORMS.flatMap((form) =>
    [0.3, 0.6, 1].flatMap((share) =>
      [0, 5, 11].map((fenceMm) => ({
        form,
        share,
        fenceMm,
        name: `${form.kind} ${form.diameterMm} mm at ${share} of its height, fence ${fenceMm} mm`,
      })),
    ),
  );

  it.each(cases)("$name", ({ form, share, fenceMm }) => {
    const outline = formOutline(form);
    const heightMm = (outline.at(-1)?.toMm ?? 0) * share;
    const thicknessMm = 10;
    const work: Polygon = [
      [
        [fenceMm, 0],
        [1000, 0],
        [1000, thicknessMm],
        [fenceMm, thicknessMm],
      ],
    ];
    const shared = cuttingPolygons(outline, heightMm).flatMap((bit) =>
      polygonClipping.intersection(bit, work),
    );
    const found = removedAreaMm2(outline, { heightMm, fenceMm, thicknessMm });
    // A 4000-sided arc misses its circle by less than a part in a million of the section.
    expect(Math.abs(found - area(shared))).toBeLessThan(2e-6 * Math.max(1, found) + 2e-5);
  });
});
