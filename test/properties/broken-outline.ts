import { type Outline, radiusOnSegmentMm } from "@rimwise/domain";

/** What keeps an outline from running from the tip without a gap, nowhere thinner than nothing. */
export function brokenIn(outline: Outline): string[] {
  const broken: string[] = [];
  let reachedMm = 0;
  for (const segment of outline) {
    if (Math.abs(segment.fromMm - reachedMm) > 1e-9) broken.push(`gap at ${reachedMm}`);
    if (!(segment.toMm > segment.fromMm)) broken.push(`no length at ${segment.fromMm}`);
    reachedMm = segment.toMm;
    for (let share = 0; share <= 1; share += 1 / 64) {
      const radiusMm = radiusOnSegmentMm(segment, segment.fromMm + share * (segment.toMm - segment.fromMm));
      if (!(radiusMm >= -1e-9)) broken.push(`radius ${radiusMm} in the segment from ${segment.fromMm}`);
    }
  }
  return reachedMm > 0 ? broken : [...broken, "no outline"];
}
