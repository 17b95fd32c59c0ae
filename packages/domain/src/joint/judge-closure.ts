import type { JointClosure } from "./close-joint.ts";
import { type JointFinding, SHOWS_MM } from "./finding.ts";
import type { Halves, JointDefinition } from "./kind/define.ts";

/** What shows of a joint in the work: its fit against the one asked, what stays open, and what is not flush. */
export function closureFindings(
  definition: JointDefinition,
  halves: Halves,
  closure: JointClosure,
  clearanceMm: number,
): JointFinding[] {
  const { gap, facesOffMm, endsOffMm = 0 } = closure;
  const playMm = playOf(definition, halves);
  const findings: JointFinding[] = [...(definition.findings?.(halves) ?? [])];
  if (playMm !== undefined) findings.push(...fitFindings(playMm - clearanceMm, definition));
  // The play shows by itself.
  if (definition.touchesThroughout && gap.mm > Math.max(0, playMm ?? 0) + SHOWS_MM) {
    const severity = "care";
    findings.push({ code: "stays-open", severity, gapMm: gap.mm, fromEdgeMm: gap.xMm, fromFaceMm: gap.zMm });
  }
  if (definition.touchesThroughout && Math.abs(facesOffMm) > SHOWS_MM) {
    findings.push({ code: "faces-not-flush", severity: "care", facesOffMm });
  }
  if (Math.abs(endsOffMm) > SHOWS_MM) findings.push({ code: "ends-not-flush", severity: "care", endsOffMm });
  return findings;
}

/** The play of what goes in, both sides together, mm; under 0 it is too thick. Undefined if one bit makes both. */
export function playOf({ goesInMm }: JointDefinition, halves: Halves): number | undefined {
  if (goesInMm === undefined) return undefined;
  const [openingMm, thicknessMm] = goesInMm(halves);
  return openingMm - thicknessMm;
}

function fitFindings(looseByMm: number, { fitBy }: JointDefinition): JointFinding[] {
  if (Math.abs(looseByMm) <= SHOWS_MM) return [];
  const byMm = Math.abs(looseByMm);
  const code = looseByMm < 0 ? "goes-in-too-tight" : "goes-in-too-loose";
  return [{ code, severity: "care", byMm, shimMm: fitBy === "bits" ? byMm : undefined }];
}
