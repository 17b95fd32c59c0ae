import { DomainError } from "../quantity/fault.ts";
import { rangeFaults } from "../quantity/range.ts";
import type { BushingLine } from "./step.ts";
import { leastBushingMm, otherBushingMm, templateOffsetMm, turnsFree } from "./template-offset.ts";

/** A bit, what runs along the template with it, and what is cut. */
export type TemplateAsked = {
  readonly bitDiameterMm: number;
  readonly runs: { readonly by: "bushing" | "bearing"; readonly diameterMm: number };
  readonly line: BushingLine;
  /** The least radius of an inside corner that is wanted in the finished work. */
  readonly insideRadiusMm?: number;
};

export type TemplateFit = {
  /** From the template's line to the cut's; under 0 the cut goes past the line. */
  readonly offsetMm: number;
  /** The least radius of an inside corner: in the finished work, and of the template that it takes. */
  readonly leastInsideRadiusMm: number;
  readonly leastTemplateRadiusMm: number;
  /** The radius of the template's corner that gives the one wanted; undefined if none is wanted or none gives it. */
  readonly templateRadiusMm: number | undefined;
  /** The bushing for the other part of an inlay, on this template with this bit; undefined otherwise, or if the bit does not turn free in it. */
  readonly otherBushingDiameterMm: number | undefined;
  readonly findings: readonly TemplateFinding[];
};

/** Why a template does not give what is wanted. */
export type TemplateFinding =
  | {
      readonly code: "inside-corner-too-tight";
      readonly severity: "refuse";
      readonly wantedRadiusMm: number;
      readonly leastRadiusMm: number;
    }
  | {
      readonly code: "bushing-too-small";
      readonly severity: "refuse";
      readonly bushingDiameterMm: number;
      readonly bitDiameterMm: number;
    }
  | {
      readonly code: "plug-not-possible";
      readonly severity: "refuse";
      readonly bushingDiameterMm: number;
      readonly bitDiameterMm: number;
      /** The recess must run on a bushing larger than this. */
      readonly aboveMm: number;
    };

export type TemplateFindingCode = TemplateFinding["code"];

/** Diameters that any bit, bushing or bearing has, and corners anybody wants, mm. Ours. */
const DIAMETER_RANGE = { min: 1, max: 150 } as const;
const RADIUS_RANGE = { min: 0, max: 1000 } as const;

/** Rounding of a corner that is just what the bit makes, mm. */
const ROUNDING_MM = 1e-9;

/**
 * What a bit cuts along a template. What runs along it, B wide, holds the cut of a bit D wide (B − D)/2 off its line; a bit makes no
 * inside corner tighter than D/2, and the template's own may be no tighter than B/2, or than half of the larger bushing of an inlay. A
 * wanted corner that is tighter is a finding. Lengths in mm; source: geometry. Throws a DomainError (`/bitDiameterMm`,
 * `/runs/diameterMm`, `/insideRadiusMm`) for sizes that nothing has.
 * @example
 * const runs = { by: "bushing", diameterMm: 19 };
 * templateFit({ bitDiameterMm: 12.7, runs, line: "inside" }) // → { offsetMm: 3.15, leastInsideRadiusMm: 6.35, leastTemplateRadiusMm: 9.5 }
 */
export function templateFit({ bitDiameterMm, runs, line, insideRadiusMm }: TemplateAsked): TemplateFit {
  const faults = [
    ...rangeFaults("/bitDiameterMm", bitDiameterMm, DIAMETER_RANGE),
    ...rangeFaults("/runs/diameterMm", runs.diameterMm, DIAMETER_RANGE),
    ...rangeFaults("/insideRadiusMm", insideRadiusMm, RADIUS_RANGE),
  ];
  if (faults.length > 0) throw new DomainError(faults);
  const otherMm = otherBushingMm(line, runs.diameterMm, bitDiameterMm);
  const recessMm = Math.max(runs.diameterMm, otherMm ?? 0);
  const leastInsideRadiusMm = bitDiameterMm / 2;
  const offsetMm = templateOffsetMm(line, runs.diameterMm, bitDiameterMm);
  const isReached = insideRadiusMm !== undefined && insideRadiusMm >= leastInsideRadiusMm - ROUNDING_MM;
  return {
    offsetMm,
    leastInsideRadiusMm,
    leastTemplateRadiusMm: recessMm / 2,
    templateRadiusMm: isReached ? insideRadiusMm + offsetMm : undefined,
    otherBushingDiameterMm: otherMm !== undefined && turnsFree(otherMm, bitDiameterMm) ? otherMm : undefined,
    findings: findingsOf(
      { bitDiameterMm, runs, line, ...(!isReached && insideRadiusMm !== undefined && { insideRadiusMm }) },
      otherMm,
    ),
  };
}

/** A corner still named here is tighter than the bit makes it. */
function findingsOf(
  { bitDiameterMm, runs, insideRadiusMm }: TemplateAsked,
  otherMm: number | undefined,
): TemplateFinding[] {
  const severity = "refuse";
  const findings: TemplateFinding[] = [];
  if (insideRadiusMm !== undefined) {
    const leastRadiusMm = bitDiameterMm / 2;
    findings.push({
      code: "inside-corner-too-tight",
      severity,
      wantedRadiusMm: insideRadiusMm,
      leastRadiusMm,
    });
  }
  const bushing = { bushingDiameterMm: runs.diameterMm, bitDiameterMm };
  if (runs.by === "bushing" && !turnsFree(runs.diameterMm, bitDiameterMm)) {
    findings.push({ code: "bushing-too-small", severity, ...bushing });
  }
  if (otherMm !== undefined && !turnsFree(otherMm, bitDiameterMm)) {
    findings.push({
      code: "plug-not-possible",
      severity,
      ...bushing,
      aboveMm: runs.diameterMm - otherMm + leastBushingMm(bitDiameterMm),
    });
  }
  return findings;
}
